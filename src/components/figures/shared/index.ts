// What this room lets out.
export { ShortsAlong, VoltsAlong } from './AlongCharts.tsx';
export { FieldSlider } from './FieldSlider.tsx';
export { Histogram } from './Histogram.tsx';
export { partsOf } from './part-names.ts';
export { Slider } from './Slider.tsx';
export type { AllWritten } from './use-settings.ts';
export { listOf, oneOf, useSettings, whole, within, yesOrNo } from './use-settings.ts';
