// What this room lets out: how a picture is had. What draws it comes when one is shown.
export { loadPicture, type PictureProps } from './load-picture.ts';
