// What this room lets out.
export { Keep } from './Keep.tsx';
export { default } from './Notebook.tsx';
