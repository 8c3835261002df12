// A button that asks for a file; the browser's own field is named by it.
import { useRef } from 'preact/hooks';

interface FileButtonProps {
  readonly label: string;
  readonly onFile: (file: File) => Promise<void>;
}

export function FileButton({ label, onFile }: FileButtonProps) {
  const field = useRef<HTMLInputElement>(null);
  return (
    <>
      <input
        ref={field}
        type="file"
        accept=".json,application/json"
        hidden
        aria-label={label}
        onChange={async ({ currentTarget }) => {
          const [file] = currentTarget.files ?? [];
          if (file !== undefined) await onFile(file);
          // The same file may be taken in again.
          currentTarget.value = '';
        }}
      />
      <button class="button quiet" type="button" onClick={() => field.current?.click()}>
        {label}
      </button>
    </>
  );
}
