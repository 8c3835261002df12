// What this room lets out.
export { ShortsAlong, VoltsAlong } from './AlongCharts.tsx';
export { partsOf } from './along-parts.ts';
export { FieldSlider } from './FieldSlider.tsx';
export { Histogram } from './Histogram.tsx';
export { Slider } from './Slider.tsx';
