// What is drawn for an id. Astro finds what comes to life in the browser by its name in a page, so each id stands there by name; the type
// checker asks for one that is missing, and without it the build stops.

export function drawn<Id extends string, Drawing>(id: Id, all: Readonly<Record<NoInfer<Id>, () => Drawing>>): Drawing {
  if (!Object.hasOwn(all, id))
    throw new Error(`Nothing is drawn for "${id}"; there are ${Object.keys(all).join(', ')}`);
  return all[id]();
}
