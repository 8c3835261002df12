// What a check looks like at the track: where tips, clips, lamps and coin go. The track from above, things as outlines.
// Rail A is the solid line and rail B the dashed one; the two parts differ by colour, by the lie of the sleepers and in words.
import type { ComponentChildren } from 'preact';
import type { Say } from '../words/index.ts';

interface Pictured {
  readonly say: Say;
}

type Point = readonly [x: number, y: number];
type Part = 'old' | 'new';

const PICTURES = {
  'meter-rail-to-rail': MeterRailToRail,
  'meter-across-gap': MeterAcrossGap,
  'ohms-across-gap': OhmsAcrossGap,
  'two-lamps': TwoLamps,
  jumper: Jumper,
  'jumper-in-part': JumperInPart,
  'coin-place': CoinPlace,
  'load-resistor': LoadResistor,
  'plug-signs': PlugSigns,
  'where-to-look-on-units': WhereToLook,
  'lit-coach': LitCoach,
} as const;

/** Every picture that a check may name. */
export const CHECK_PICTURES: readonly string[] = Object.keys(PICTURES);

function isPicture(id: string): id is keyof typeof PICTURES {
  return CHECK_PICTURES.includes(id);
}

/** The picture of a check, with `picture-<id>` as its text; nothing if there is no picture of that id. */
export function CheckPicture({ id, say }: { readonly id: string; readonly say: Say }) {
  if (!isPicture(id)) return null;
  const Picture = PICTURES[id];
  return (
    <div class="check-picture" role="img" aria-label={say(`picture-${id}`)}>
      <Picture say={say} />
    </div>
  );
}

// Both rails in one part. The letters stand at the end of the track that the picture does not cut off.

function MeterRailToRail({ say }: Pictured) {
  return (
    <svg class="alone" viewBox="0 0 320 184">
      <Track from={24} to={212} rails={[64, 120]} part="old" />
      <Letters x={9} rails={[64, 120]} />
      <RailToRailMeter say={say} x={92} />
    </svg>
  );
}

function LoadResistor({ say }: Pictured) {
  return (
    <svg class="alone" viewBox="0 0 320 218">
      <Track from={24} to={212} rails={[64, 120]} part="old" />
      <Letters x={9} rails={[64, 120]} />
      <rect class="put" x="44" y="46" width="30" height="138" rx="6" />
      <path class="wire" d="M59 64V76M59 108V120" />
      <rect class="box" x="50" y="76" width="18" height="32" />
      <Contact at={[59, 64]} />
      <Contact at={[59, 120]} />
      <path class="heat" d="M46 36q-5-6 0-12t0-12M59 36q-5-6 0-12t0-12M72 36q-5-6 0-12t0-12" />
      <RailToRailMeter say={say} x={104} />
      <text x="44" y="208">
        {say('picture-load-resistor-holder')}
      </text>
    </svg>
  );
}

function RailToRailMeter({ say, x }: Pictured & { readonly x: number }) {
  return (
    <>
      <path class="wire" d={`M${x + 69} 24C${x + 110} 0 252 18 252 60`} />
      <path class="wire" d={`M${x + 69} 160C${x + 110} 184 252 166 252 124`} />
      <Probe at={[x, 64]} turn={-30} />
      <Probe at={[x, 120]} turn={30} />
      <Meter at={[226, 60]} say={say} />
    </>
  );
}

// Across the gap.

const GAP_RAILS: Point = [100, 144];

function MeterAcrossGap({ say }: Pictured) {
  return (
    <div class="panels">
      <Panel step={1} title={say('picture-meter-across-gap-lamp')} height={204}>
        <PartNames say={say} width={280} y={66} />
        <GapTrack rails={GAP_RAILS} />
        <LampAcross below={144} lamp={182} />
      </Panel>
      <Panel step={2} title={say('picture-meter-across-gap-same')} height={204}>
        <GapTrack rails={GAP_RAILS} />
        <LampAcross below={144} lamp={182} />
        <ProbesOnA say={say} />
      </Panel>
      <Panel step={3} title={say('picture-meter-across-gap-diagonal')} height={204}>
        <GapTrack rails={GAP_RAILS} />
        <LampAcross below={144} lamp={182} />
        <path
          class="wire"
          d="M97 49H62C46 49 40 50 49 60M183 49H244C270 49 283 62 283 96V140C283 178 270 190 262 203"
        />
        <Probe at={[88, 100]} turn={-134} />
        <Probe at={[206, 144]} turn={47} />
        <Meter at={[98, 12]} say={say} />
      </Panel>
    </div>
  );
}

function OhmsAcrossGap({ say }: Pictured) {
  return (
    <div class="panels">
      <Panel step={1} title={say('picture-ohms-across-gap-a')} height={204}>
        <GapTrack rails={GAP_RAILS} />
        <ProbesOnA say={say} />
      </Panel>
      <Panel step={2} title={say('picture-ohms-across-gap-b')} height={204}>
        <GapTrack rails={[62, 106]} />
        <path class="wire" d="M97 178H62C46 178 40 162 49 146M183 178H218C234 178 240 162 231 146" />
        <Probe at={[88, 106]} turn={134} />
        <Probe at={[192, 106]} turn={46} />
        <Meter at={[98, 138]} say={say} />
      </Panel>
    </div>
  );
}

function ProbesOnA({ say }: Pictured) {
  return (
    <>
      <path class="wire" d="M97 49H62C46 49 40 50 49 60M183 49H218C234 49 240 50 231 60" />
      <Probe at={[88, 100]} turn={-134} />
      <Probe at={[192, 100]} turn={-46} />
      <Meter at={[98, 12]} say={say} />
    </>
  );
}

function TwoLamps({ say }: Pictured) {
  return (
    <svg class="alone" viewBox="0 0 280 200">
      <PartNames say={say} width={280} />
      <GapTrack rails={[90, 134]} />
      <LampAcross below={90} lamp={50} />
      <LampAcross below={134} lamp={174} />
    </svg>
  );
}

// The lamp with its two leads, each clipped to the same rail on its side of the gap.
function LampAcross({ below: rail, lamp }: { readonly below: number; readonly lamp: number }) {
  return (
    <>
      <path class="wire" d={`M96 ${rail}V${lamp}H184V${rail}`} />
      <Lamp at={[140, lamp]} />
      <Clip at={[96, rail]} flip={lamp > rail} />
      <Clip at={[184, rail]} flip={lamp > rail} />
    </>
  );
}

function Jumper({ say }: Pictured) {
  const rails: Point = [84, 128];
  return (
    <svg class="alone" viewBox="0 0 340 258">
      <PartNames say={say} width={340} />
      <Track from={24} to={128} rails={rails} part="old" />
      <Track from={164} to={316} rails={rails} part="new" />
      <Letters x={9} rails={rails} />
      <Letters x={331} rails={rails} />
      <GapMarks between={[128, 164]} rails={rails} />
      <path d="M46 84V206M74 128V206M198 84V166M218 128V166" />
      <path class="joint" d="M46 84h0M74 128h0M198 84h0M218 128h0" />
      <Box x={4} y={206} w={146} h={46} text={say('picture-jumper-station')} />
      <Box x={190} y={206} w={146} h={46} text={say('picture-jumper-booster')} />
      <rect class="box" x="190" y="158" width="36" height="16" rx="3" />
      <path d="M198 174v8M218 174v8" />
      <path d="M198 198v8M218 198v8" />
      <text class="soft" x="236" y="189">
        {say('picture-jumper-pulled')}
      </text>
      <path class="wire" d="M104 84V62C104 34 182 34 182 62V84" />
      <Clip at={[104, 84]} />
      <Clip at={[182, 84]} />
      <Locomotive at={[230, 128]} />
    </svg>
  );
}

function JumperInPart({ say }: Pictured) {
  const rails: Point = [76, 120];
  return (
    <svg class="alone" viewBox="0 0 320 166">
      <Track from={24} to={296} rails={rails} part="old" />
      <Letters x={9} rails={rails} />
      <Letters x={311} rails={rails} />
      <rect class="joiner" x="84" y="71" width="32" height="10" rx="2" />
      <rect class="joiner" x="84" y="115" width="32" height="10" rx="2" />
      <path d="M100 68v16M100 112v16" />
      <text class="middle" x="100" y="156">
        {say('picture-jumper-in-part-joint')}
      </text>
      <path class="wire" d="M64 76V52C64 20 136 20 136 52V76" />
      <Clip at={[64, 76]} />
      <Clip at={[136, 76]} />
      <Coach at={[150, 120]} />
    </svg>
  );
}

function LitCoach({ say }: Pictured) {
  const rails: Point = [92, 136];
  return (
    <svg class="alone" viewBox="0 0 320 192">
      <PartNames say={say} width={320} />
      <Track from={24} to={88} rails={rails} part="old" />
      <Track from={124} to={296} rails={rails} part="new" />
      <Letters x={9} rails={rails} />
      <Letters x={311} rails={rails} />
      <GapMarks between={[88, 124]} rails={rails} />
      <Coach at={[144, 136]} />
      <path class="wire thin" d="M149 151v10M275 151v10M149 156h126" />
      <text class="end" x="320" y="184">
        {say('picture-lit-coach-wheels')}
      </text>
    </svg>
  );
}

function CoinPlace({ say }: Pictured) {
  const rails: Point = [64, 108];
  return (
    <div class="panels">
      <Panel title={say('picture-coin-place-here')} height={204}>
        <Track from={6} to={274} rails={rails} part="old" />
        <circle class="put" cx="92" cy="86" r="36" />
        <circle class="put" cx="92" cy="86" r="30" />
        <text class="middle" x="90" y="92">
          {say('picture-coin-place-coin')}
        </text>
        <Pliers at={[115, 103]} />
        <text x="6" y="196">
          {say('picture-coin-place-handles')}
        </text>
      </Panel>
      <Panel title={say('picture-coin-place-not')} height={176}>
        <Track from={6} to={56} rails={rails} part="old" />
        <Track from={84} to={274} rails={rails} part="new" />
        <GapMarks between={[56, 84]} rails={rails} />
        <g class="new">
          <path class="rail" d="M134 64C184 66 232 92 268 136" />
          <path class="rail dashed" d="M126 108C168 110 206 132 234 164" />
        </g>
        <NotHere at={[70, 86]} />
        <NotHere at={[206, 96]} />
      </Panel>
    </div>
  );
}

function NotHere({ at: [x, y] }: { readonly at: Point }) {
  return (
    <g transform={`translate(${x} ${y})`}>
      <circle class="absent" r="34" />
      <path class="cross" d="M-30-30L30 30M30-30L-30 30" />
    </g>
  );
}

// The pliers lie to the lower right; their jaws are at `at`.
function Pliers({ at: [x, y] }: { readonly at: Point }) {
  return (
    <g transform={`translate(${x} ${y}) rotate(34)`}>
      <path class="tool" d="M0-4L34-10H50V10H34L0 4Z" />
      <path d="M0 0H30" />
      <path class="grip edge" d="M54-6C74-14 100-24 122-22M54 6C74 14 100 24 122 22" />
      <path class="grip" d="M54-6C74-14 100-24 122-22M54 6C74 14 100 24 122 22" />
      <circle class="tool" cx="46" r="9" />
    </g>
  );
}

// Units and signs.

function PlugSigns({ say }: Pictured) {
  return (
    <svg class="alone" viewBox="0 0 320 206">
      <Plug y={34} inner="+" />
      <text x="162" y="40">
        {say('picture-plug-signs-plus')}
      </text>
      <Plug y={98} inner="-" />
      <text x="162" y="104">
        {say('picture-plug-signs-minus')}
      </text>
      <path class="rule" d="M4 142H316" />
      <path class="sign-line" d="M12 166h44M12 180h11m5.5 0h11m5.5 0h11" />
      <text x="72" y="180">
        {say('picture-plug-signs-direct')}
      </text>
      <path class="sign-line" d="M162 174c7-18 17-18 24 0s17 18 24 0" />
      <text x="226" y="180">
        {say('picture-plug-signs-alternating')}
      </text>
    </svg>
  );
}

// Left the sign of the outer ring, right that of the dot in the middle.
function Plug({ y, inner }: { readonly y: number; readonly inner: '+' | '-' }) {
  return (
    <g transform={`translate(76 ${y})`} class="sign-line">
      <circle cx="-62" r="13" />
      <circle cx="62" r="13" />
      <path d="M-49 0h27M0 0h49M15.6-15.6A22 22 0 1 0 15.6 15.6" />
      <circle class="dot" r="6" />
      <path d={inner === '+' ? 'M-68 0h12M56 0h12M62-6v12' : 'M-68 0h12M-62-6v12M56 0h12'} />
    </g>
  );
}

const PLACES = ['lamps', 'supply', 'control', 'track'] as const;

function WhereToLook({ say }: Pictured) {
  const picture = 'picture-where-to-look-on-units';
  return (
    <svg class="alone" viewBox="0 0 340 252">
      <Unit x={4} name={say(`${picture}-station`)} places={[28, 72, 126]} />
      <Unit x={184} name={say(`${picture}-booster`)} places={[124, 80, 26]} />
      <path class="wire cable" d="M130 106H210" />
      {PLACES.map((place, at) => (
        <text key={place} x={at % 2 === 0 ? 4 : 174} y={at < 2 ? 220 : 246}>
          <tspan class="mark">{at + 1}</tspan>
          <tspan dx="8">{say(`${picture}-${place}`)}</tspan>
        </text>
      ))}
    </svg>
  );
}

interface UnitProps {
  readonly x: number;
  readonly name: string;
  /** Where in the box the supply socket, the track output and the control socket sit, from the left. */
  readonly places: readonly [supply: number, track: number, control: number];
}

function Unit({ x, name, places: [supply, track, control] }: UnitProps) {
  return (
    <g transform={`translate(${x} 0)`}>
      <Track from={track - 38} to={track + 38} rails={[162, 182]} part={x < 100 ? 'old' : 'new'} small />
      <rect class="box" x="0" y="6" width="152" height="124" rx="5" />
      <text class="middle" x="76" y="29">
        {name}
      </text>
      <Mark at={[52, 60]} number={1} />
      <path class="put" d="M76 48a6 6 0 1 1 0 12a6 6 0 1 1 0-12M100 48a6 6 0 1 1 0 12a6 6 0 1 1 0-12" />
      <Mark at={[supply, 88]} number={2} />
      <circle cx={supply} cy="106" r="10" />
      <circle class="dot" cx={supply} cy="106" r="3.5" />
      <path d={`M${supply - 4} 130v22M${supply + 4} 130v22`} />
      <Mark at={[control, 88]} number={3} />
      <rect x={control - 11} y="98" width="22" height="16" rx="2" />
      <Mark at={[track, 88]} number={4} />
      <path d={`M${track - 9} 106V162M${track + 9} 106V182`} />
      <circle class="box" cx={track - 9} cy="106" r="7" />
      <circle class="box" cx={track + 9} cy="106" r="7" />
      <path d={`M${track - 13} 110l8-8M${track + 5} 110l8-8`} />
      <path class="joint" d={`M${track - 9} 162h0M${track + 9} 182h0`} />
    </g>
  );
}

function Mark({ at: [x, y], number }: { readonly at: Point; readonly number: number }) {
  return (
    <text class="middle mark" x={x} y={y}>
      {number}
    </text>
  );
}

// What the pictures are made of.

interface PanelProps {
  readonly step?: number;
  readonly title: string;
  readonly height: number;
  readonly children: ComponentChildren;
}

function Panel({ step, title, height, children }: PanelProps) {
  return (
    <svg viewBox={`0 0 288 ${height}`}>
      <text x="2" y="18">
        {step !== undefined && <tspan class="mark">{step}</tspan>}
        <tspan dx={step === undefined ? 0 : 8}>{title}</tspan>
      </text>
      {children}
    </svg>
  );
}

interface TrackProps {
  readonly from: number;
  readonly to: number;
  /** Rail A above, rail B below. */
  readonly rails: Point;
  readonly part: Part;
  readonly small?: boolean;
}

function Track({ from, to, rails: [a, b], part, small = false }: TrackProps) {
  const overhang = small ? 6 : 9;
  const step = small ? 11 : 16;
  const lean = part === 'old' ? 0 : (b - a) / 4;
  const count = Math.floor((to - from - step) / step) + 1;
  const spare = (to - from - (count - 1) * step) / 2;
  const sleepers = Array.from(
    { length: count },
    (_, place) => `M${from + spare + step * place - lean / 2} ${a - overhang}l${lean} ${b - a + 2 * overhang}`,
  ).join('');
  return (
    <g class={small ? `${part} slight` : part}>
      <path class="sleepers" d={sleepers} />
      <path class="rail" d={`M${from} ${a}H${to}`} />
      <path class="rail dashed" d={`M${from} ${b}H${to}`} />
    </g>
  );
}

function Letters({ x, rails: [a, b] }: { readonly x: number; readonly rails: Point }) {
  return (
    <>
      <text class="middle strong" x={x} y={a + 6}>
        A
      </text>
      <text class="middle strong" x={x} y={b + 6}>
        B
      </text>
    </>
  );
}

// Old part, gap and new part in a picture 280 wide.
function GapTrack({ rails }: { readonly rails: Point }) {
  return (
    <>
      <Track from={24} to={122} rails={rails} part="old" />
      <Track from={158} to={256} rails={rails} part="new" />
      <Letters x={9} rails={rails} />
      <Letters x={268} rails={rails} />
      <GapMarks between={[122, 158]} rails={rails} />
    </>
  );
}

function GapMarks({ between: [left, right], rails: [a, b] }: { readonly between: Point; readonly rails: Point }) {
  const height = b - a + 24;
  return <path class="gap" d={`M${left + 5} ${a - 12}v${height}M${right - 5} ${a - 12}v${height}`} />;
}

function PartNames({ say, width, y = 18 }: Pictured & { readonly width: number; readonly y?: number }) {
  return (
    <>
      <text x="2" y={y}>
        {say('picture-parts-old')}
      </text>
      <text class="end" x={width - 2} y={y}>
        {say('picture-parts-new')}
      </text>
    </>
  );
}

function Box({ x, y, w, h, text }: Readonly<Record<'x' | 'y' | 'w' | 'h', number>> & { readonly text: string }) {
  return (
    <>
      <rect class="box" x={x} y={y} width={w} height={h} rx="5" />
      <text class="middle" x={x + w / 2} y={y + h / 2 + 6}>
        {text}
      </text>
    </>
  );
}

function Meter({ at: [x, y], say }: Pictured & { readonly at: Point }) {
  return (
    <g transform={`translate(${x} ${y})`}>
      <rect class="box" width="84" height="64" rx="7" />
      <path d="M18 32a26 26 0 0 1 48 0" />
      <path class="needle" d="M42 34L55 18" />
      <text class="middle" x="42" y="54">
        {say('picture-parts-meter')}
      </text>
    </g>
  );
}

// A test tip: it touches the rail at `at` and lies in the direction `turn`, degrees clockwise from the right. 80 long.
function Probe({ at: [x, y], turn }: { readonly at: Point; readonly turn: number }) {
  return (
    <>
      <g transform={`translate(${x} ${y}) rotate(${turn})`}>
        <path class="tip" d="M0 0H22" />
        <path class="put" d="M20-4H30V-6H66Q74-5 78 0Q74 5 66 6H30V4H20Z" />
      </g>
      <Contact at={[x, y]} />
    </>
  );
}

function Contact({ at: [x, y] }: { readonly at: Point }) {
  return <circle class="contact" cx={x} cy={y} r="5.5" />;
}

// A spring clip on a rail: above it, or below it when flipped.
function Clip({ at: [x, y], flip = false }: { readonly at: Point; readonly flip?: boolean }) {
  return (
    <>
      <path class="put" transform={`translate(${x} ${y}) scale(1 ${flip ? -1 : 1})`} d="M-3 0L-7-24Q0-30 7-24L3 0Z" />
      <Contact at={[x, y]} />
    </>
  );
}

function Lamp({ at: [x, y] }: { readonly at: Point }) {
  return (
    <g transform={`translate(${x} ${y})`}>
      <circle class="put" r="17" />
      <path class="wire thin" d="M-12-12L12 12M12-12L-12 12" />
    </g>
  );
}

// Vehicles stand on rail B and hide rail A behind them. `at` is the left end, on the rail.

function Coach({ at: [x, y] }: { readonly at: Point }) {
  return (
    <g transform={`translate(${x} ${y})`}>
      <path class="light" d="M20-82v-10M44-82v-12M68-82v-10M92-82v-12M116-82v-10" />
      <path class="body" d="M0-20V-64Q0-74 12-74H124Q136-74 136-64V-20Z" />
      <path class="put" d="M12-60H36V-40H12ZM44-60H64V-40H44ZM72-60H92V-40H72ZM100-60H124V-40H100Z" />
      <path d="M0-30H136" />
      <Wheels at={[14, 34, 102, 122]} />
    </g>
  );
}

function Locomotive({ at: [x, y] }: { readonly at: Point }) {
  return (
    <g transform={`translate(${x} ${y})`}>
      <path class="light" d="M28-76v-9M41-76v-11M54-76v-9" />
      <path class="body" d="M0-18V-36L6-46H22V-68H60V-46H78L84-36V-18Z" />
      <path class="put" d="M29-61H38V-48H29ZM44-61H53V-48H44Z" />
      <path d="M0-30H84" />
      <Wheels at={[14, 34, 50, 70]} />
    </g>
  );
}

function Wheels({ at }: { readonly at: readonly number[] }) {
  return (
    <>
      {at.map((x) => (
        <circle class="wheel" key={x} cx={x} cy="-9" r="9" />
      ))}
    </>
  );
}
