// `client:asked`: a part that comes alive once somebody wants something of it.

/** @returns {import('astro').AstroIntegration} */
export const asked = () => ({
  name: 'asked',
  hooks: {
    'astro:config:setup': ({ addClientDirective }) =>
      addClientDirective({ name: 'asked', entrypoint: './src/components/page-scripts/asked.ts' }),
  },
});
