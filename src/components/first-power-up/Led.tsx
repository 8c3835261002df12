// A sentence and the way on.
export function Led({ text, to, name }: { readonly text: string; readonly to: string; readonly name: string }) {
  return (
    <p class="part">
      {text}{' '}
      <a class="button" href={to}>
        {name}
      </a>
    </p>
  );
}
