import 'astro';

declare module 'astro' {
  interface AstroClientDirectives {
    /** Alive once somebody reaches for it: src/components/page-scripts/asked.ts. */
    'client:asked'?: boolean;
  }
}
