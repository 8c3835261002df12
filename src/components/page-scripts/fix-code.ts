// The square code of a fix on paper, beside its address: a file of its own, fetched once somebody prints (pass-on-fix.ts).
import { codeOf } from '../code/index.ts';
import { codePicture } from './code-picture.ts';

const line = document.querySelector('.paper-link');
const link = line?.textContent ?? '';
if (link !== '') line?.prepend(codePicture(codeOf(link), link));
