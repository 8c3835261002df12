// What lies damaged on the device is told, can be saved, and goes only when somebody says so.
interface DamageProps {
  readonly spoilt: readonly string[];
  readonly told: string;
  readonly save: string;
  readonly forget: string;
  readonly onSave: (text: string) => void;
  readonly onForget: () => void;
}

export function Damage({ spoilt, told, save, forget, onSave, onForget }: DamageProps) {
  if (spoilt.length === 0) return null;
  return (
    <div class="caution damage" role="alert">
      <div>
        <p>{told}</p>
        <p class="acts">
          <button class="button quiet" type="button" onClick={() => onSave(spoilt.join('\n\n'))}>
            {save}
          </button>
          <button class="button quiet" type="button" onClick={onForget}>
            {forget}
          </button>
        </p>
      </div>
    </div>
  );
}
