// The switch "metric / feet and gauge" at the foot of every page. Without script there is none, and pages speak metric.
import {
  chooseUnits,
  chosenUnits,
  keepUnitsIn,
  onUnits,
  showUnits,
  systemNamed,
  tellUnits,
  unitsShown,
} from '../device/index.ts';
import './keep-copy.ts';

const { address, device } = chosenUnits();
// An island that has read its answers may have shown them in their units already.
showUnits(unitsShown() ?? address ?? device ?? 'metric');

const choice = document.querySelector<HTMLFieldSetElement>('fieldset.units');
if (choice !== null) {
  choice.removeAttribute('data-waits');
  choice.addEventListener('change', (event) => {
    const system = event.target instanceof HTMLInputElement ? systemNamed(event.target.value) : undefined;
    if (system !== undefined) chooseUnits(system);
  });
}

document.addEventListener(
  'click',
  (event) => {
    const link = event.target instanceof Element ? event.target.closest('a') : null;
    if (link !== null) keepUnitsIn(link);
  },
  { capture: true },
);

// What is written for both systems follows the address and the device; an island tells its own.
onUnits(() => {
  if (document.querySelector('main astro-island') !== null) return;
  const now = chosenUnits();
  showUnits(now.address ?? now.device ?? 'metric');
});
// A page that the browser kept comes back as it was left: it reads again what was chosen meanwhile.
addEventListener('pageshow', (event) => {
  if (event.persisted) tellUnits();
});
