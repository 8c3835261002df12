// What a file of a layout sheet holds, for other programs: JSON Schema, made of the shape that the site reads by.
import { toJSONSchema } from 'zod/mini';
import { sheetShape } from '../wizards/sheet/index.ts';

export const GET = (): Response => new Response(JSON.stringify(toJSONSchema(sheetShape), undefined, 1));
