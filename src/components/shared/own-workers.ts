// Where the policy of a page asks for it (require-trusted-types-for), a browser starts no worker from a bare address; this says which addresses
// are the site's own. Nothing else that a string could become is allowed: no script, no markup.

declare global {
  interface Window {
    /** Only in browsers that know trusted types. */
    readonly trustedTypes?: {
      readonly defaultPolicy: unknown;
      createPolicy(
        name: string,
        rules: { createScriptURL(address: string): string | null },
      ): { createScriptURL(address: string): string };
    };
  }
}

/** Once on a page, before its first worker. */
export function allowOwnWorkers(): void {
  if (window.trustedTypes?.defaultPolicy !== null) return;
  window.trustedTypes.createPolicy('default', {
    createScriptURL: (address) => (new URL(address, location.href).origin === location.origin ? address : null),
  });
}
