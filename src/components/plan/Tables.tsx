// The two tables of a plan, each with a place for one’s own.
import type { PartProps } from './props.ts';
import { partCount, partSize, testGroups } from './said.ts';

export function TestTable(told: PartProps) {
  const { plan, say, home } = told;
  const waits = !plan.steps.some(({ id }) => id === 'each-alone');
  return waits && plan.tests.length === 0 ? (
    <p>{say('plan-tests-wait')}</p>
  ) : (
    <>
      {waits && <p>{say('plan-tests-wait')}</p>}
      <p>
        {say('plan-tests-lead')} <a href={`${home}work-it-out/first-power-up/`}>{say('plan-walk-tests')}</a>
      </p>
      <table class="plan-tests">
        <thead>
          <tr>
            <th scope="col">{say('plan-test-what')}</th>
            <th scope="col">{say('plan-test-expected')}</th>
            <th scope="col">{say('plan-test-where-yours')}</th>
            <th scope="col">{say('plan-test-unless')}</th>
          </tr>
        </thead>
        <tbody>
          {testGroups(plan, told).map(({ kind, what, expected, places }) => (
            <tr key={`${kind} ${expected}`}>
              <th scope="row">{what}</th>
              <td data-head={say('plan-test-expected')}>{expected}</td>
              <td data-head={say('plan-test-where')}>
                <ul class="places">
                  {places.map(({ id, where }) => (
                    <li key={id}>
                      <span>{where}</span> <span class="yours" />
                    </li>
                  ))}
                </ul>
              </td>
              <td data-head={say('plan-test-unless')}>{say(`plan-unless-${kind}`)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="signed">
        <span>{say('plan-tested-by')}</span> <span>{say('plan-tested-on')}</span>
      </p>
    </>
  );
}

export function PartsTable(told: PartProps) {
  const { plan, say } = told;
  return (
    <>
      <p>
        {say('plan-parts-lead')} {plan.power !== 'listed' && <b>{say(`plan-parts-${plan.power}`)}</b>}
      </p>
      <table class="plan-parts">
        <thead>
          <tr>
            <th scope="col">{say('plan-part-kind')}</th>
            <th scope="col">{say('plan-part-size')}</th>
            <th scope="col">{say('plan-part-count')}</th>
            <th scope="col">{say('plan-part-for')}</th>
          </tr>
        </thead>
        <tbody>
          {plan.parts.map((part) => (
            <tr key={`${part.id} ${part.of ?? ''} ${part.area ?? ''}`}>
              <th scope="row">{say(`plan-get-${part.id}`)}</th>
              <td data-head={say('plan-part-size')}>{partSize(part, told)}</td>
              <td data-head={say('plan-part-count')}>{partCount(part, told)}</td>
              <td data-head={say('plan-part-for')}>
                {part.of === undefined ? '' : say('plan-where-district', { district: part.of })}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}
