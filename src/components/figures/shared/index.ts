// What this room lets out.
export { Along } from './Along.tsx';
export { FieldSlider } from './FieldSlider.tsx';
export { Histogram } from './Histogram.tsx';
export { Slider } from './Slider.tsx';
