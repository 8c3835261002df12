// What this room lets out.
// @keptFor I the page of the layout sheet
export { DrawnSheet as default } from './DrawnSheet.tsx';
