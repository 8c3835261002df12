// The words that short links are written in, version 1. A link tells them by their places: nothing here is ever taken out, moved or made
// wider; what is new stands at the end of its list. A value that has no place, or finds none, travels spelled out.

/** A name, and for a choice the bits of its place and the values; the last place of all is kept for "spelled out". */
export interface Entry {
  readonly name: string;
  /** Undefined for what is no choice. */
  readonly choice: { readonly bits: number; readonly values: readonly string[] } | undefined;
}

/** One name a line, a choice with the bits of its place and its values: `name` or `name bits value value`. */
const entriesIn = (text: string): readonly Entry[] =>
  text
    .trim()
    .split('\n')
    .map((line) => {
      const [name = '', bits, ...values] = line.trim().split(' ');
      return { name, choice: bits === undefined ? undefined : { bits: Number(bits), values } };
    });

const wordsIn = (text: string): readonly string[] => text.trim().split(/\s+/);

/** The pages whose state a short link can hold, below their language. */
export const PAGES = wordsIn(`
  work-it-out/enough-current work-it-out/which-supply-where work-it-out/wire-it put-it-right/stops-at-gap
  put-it-right/trips-at-gap put-it-right/shuts-down-after-swap put-it-right/trips-with-traffic
  put-it-right/trips-at-power-on put-it-right/ignores-commands put-it-right/slow-far-away put-it-right/jerks-at-gap
  put-it-right/accessories-misbehave put-it-right/short-not-noticed put-it-right/loop-trips
  put-it-right/still-runs-past-gap put-it-right/trips-at-one-spot put-it-right/cuts-out-after-a-while
  put-it-right/nothing-works put-it-right/one-locomotive-only put-it-right/stops-at-a-spot
  put-it-right/starts-by-itself put-it-right/dead-since-a-short put-it-right/empty-shown-occupied
  put-it-right/now-and-then put-it-right/handhelds-dead put-it-right/since-rewired put-it-right/all-slow
  put-it-right/trips-when-set-on put-it-right/programming-fails put-it-right/short-in-mid-run
  put-it-right/wrong-one-trips put-it-right/none-of-these learn/breakers learn/control-link
  learn/drive-across-the-gap learn/feed-the-new-part learn/first-switch-on learn/gap-both-rails
  learn/larger-supply-first learn/lay-feeders learn/looking-after-it learn/no-single-number learn/one-master-switch
  learn/one-train-two-supplies learn/programming-track learn/prove-the-isolation learn/reversing-sections
  learn/test-the-short learn/turnouts-and-lamps learn/two-labels learn/voltage-along-the-track
  learn/what-a-booster-adds learn/what-both-sides-carry learn/what-flows-in-the-rails learn/where-to-divide
  learn/will-it-trip learn/your-own-consumption work-it-out/share-out
`);

/** Repairs, outcomes, tools, questions and presets: what stands in lists and behind `made`. */
export const WORDS = wordsIn(`
  handed-on none eyes wire coin lamps second-locomotive second-supply resistor multimeter sagging-accessories
  accessory-reset accessory-supply-weak accessory-address accessory-wiring accessory-polarity accessory-short
  accessory-random frog-upsets-motor program-cuts-pulse accessory-shared-return voltage-step volts-set-low
  volts-too-high skew no-reference hidden-common cutout-mismatch protection-set-wrong breakers-alike fast-breaker
  waits-for-button handheld-lost control-bus-weak control-bus-supply into-control-bus radio-disturbed computer-acts
  accessory-on-bus computer-not-connected address consist-left-over decoder-muddled decoder-damaged motor-noise
  decoder-disturbs analogue-mode address-zero motor-stuck house-protection tingle one-rail second-path gap-closed
  shared-wire leftover-wiring not-enough lopsided-split supply-too-small binding-locomotive filament-lamps inrush
  restart-load stage-heat supply-heat mains-sag stage-order loop-not-isolated loop-too-short loop-no-device
  reverser-grading two-auto-reversers reverse-route turntable parked-across-loop test-misled no-feed wrong-output
  booster-off stop-active turnout-routing board-plug device-open fuse-blown old-switch mains-off reversed
  masked-reversal auto-reverse-off centre-swapped cannot-be-read programs-others detector-false detector-crosstalk
  detector-drop no-signal suppressor long-bus two-sources booster-role wrong-format metal-across crossed-feeder leak
  program-bridge live-frog frog-gap-closed track-piece-faulty wheel-bridges-frog frog-unit-slow frog-cross-district
  frog-wrong-rail switch-off-now wrong-supply-kind supply-defect stage-defect unit-cuts-out socket-damaged
  false-short blink-code self-built-unit pickup loco-loose-contact wheelset-short loco-short-inside metal-bodies
  thin-wire few-feeds bad-joiner joiner-forgotten dirty joint-step long-dead-gap brake-section wrong-supply
  volts-too-low rail-voltage-too-high regulated-supply lower-trip-level read-both-labels supply-cannot-trip
  power-is-enough breakers-and-sub-districts put-on-in-two-groups mute-and-park calm-the-consumption larger-supply
  leds-and-larger-supply booster-with-freed-supply booster-with-own-supply more-districts fewer-moving
  out-of-scope-three-rail out-of-scope-battery out-of-scope-analogue supplies-either-way larger-to-command-station
  larger-to-booster higher-rails-to-command-station set-both-outputs-equal two-supplies-alike
  measure-rail-volts-first fewer-trains-there do-not-stop-across-the-gap wiring-not-known wiring-good more-feeders
  thicker-feeders thicker-bus feed-bus-from-middle pair-to-the-middle bus-as-a-ring booster-near-load feed-missing
  link-missing link-missing-held feed-reversed forgotten-path unlike-supplies overload-district stored-energy system
  aim scale draw fleet sound measured moving evening boosters coaches accessories supply-label unit-label rails
  own-use station-label booster-label supply-one supply-two wire-need bus track bus-shape feeders rail-kind divided
  our-districts plan busier larger-unit kept-apart wheels-slip frog-not-fed protection-set-low strong-lamp
  divide-the-track shape both-amps turntable-reversed programming-not-fed no-decoder coil-held
`);

const COMMON = `
  made
  units 2 metric feet`;

/** The names of the planning wizards, in the order in which they were first asked. */
const PLANNING = entriesIn(`${COMMON}
  system 3 two-rail three-rail battery analogue unknown
  aim 3 enough shorts unknown
  scale 4 z n tt h0 0 1 unknown
  draw 3 count measured unknown
  modern
  older
  sound
  stored
  trains
  running
  standing
  moving
  evening
  boosters
  coaches
  lamps 3 filament led unknown
  accessories
  supply-kind 3 dc ac unknown
  supply-volts
  supply-amps
  supply-plug 3 centre-plus centre-minus terminals unknown
  unit-limit
  unit-input 3 dc ac either unknown
  unit-input-volts
  unit-plug 3 centre-plus centre-minus terminals unknown
  unit-rails 3 follows set converter unknown
  unit-rail-volts
  own-use 3 bare handhelds many measured unknown
  idle
  station-limit
  station-input 3 dc ac either unknown
  station-input-volts
  station-plug 3 centre-plus centre-minus terminals unknown
  station-rails 3 follows set converter unknown
  station-rail-volts
  booster-limit
  booster-input 3 dc ac either unknown
  booster-input-volts
  booster-plug 3 centre-plus centre-minus terminals unknown
  booster-rails 3 follows set converter unknown
  booster-rail-volts
  one-kind 3 dc ac unknown
  one-volts
  one-amps
  one-plug 3 centre-plus centre-minus terminals unknown
  two-kind 3 dc ac unknown
  two-volts
  two-amps
  two-plug 3 centre-plus centre-minus terminals unknown
  wire-volts
  wire-trip
  wire-amps
  bus-length
  bus-wire
  track-length
  feed-by 3 bus pair unknown
  track-shape 3 ends oval unknown
  bus-shape 3 end middle ring unknown
  feeder-count
  feeder-length
  feeder-wire
  rail-kind 4 code-100 code-83 code-80 code-70 code-55 brass steel large-brass large-nickel-silver large-steel measured unknown
  rail-ohms
  joints 3 fed soldered plain sectional unknown
  divided 3 whole divided planned unknown
  districts
  traffic-a
  limit-b
  amps-b
  traffic-b
  limit-c
  amps-c
  traffic-c
  limit-d
  amps-d
  traffic-d
  limit-e
  amps-e
  traffic-e
  limit-f
  amps-f
  traffic-f
  plan-districts
  plan-limit
  plan-amps
  plan-busiest
  busier 3 station booster same unknown
  ask
  bus-way
  shape 3 oval oval-passing double-oval out-and-back point-to-point modules unknown
  station-amps
  booster-amps
`);

const WALK = entriesIn(`${COMMON}
  told 2 yes no
  tools
  tried
  left
  doing
  undo
  fixed
  stayed 2 yes
  isolation 3 fine one-rail-joined both-rails-joined cannot
  phase 3 fine reversed cannot
  danger-now 4 none as-always warm-or-was-hot browned smoke-heat-or-damage analogue-transformer cannot
  old-transformer 3 none old-wires still-connected cannot
  what-happens 5 switches-off stops-dark stops-lit slow-or-dim fast-or-bright jerks runs-by-itself accessories-wrong gets-hot shown-occupied handhelds-dead cannot-be-read only-shown hums just-testing house-fuse tingle cannot acts-otherwise wheels-spin
  when-it-happens 4 all-the-time from-switch-on at-the-gap when-set-on at-another-place when-thrown with-traffic after-minutes after-a-short in-mid-run while-programming at-walking-pace now-and-then cannot
  what-goes-dark 3 nothing-goes-off only-that-part everything-at-once one-after-the-other cannot
  how-it-comes-back 4 never-off blink seconds minutes button when-removed stays cannot
  which-vehicles 4 one-vehicle one-kind short-ones long-or-lit only-coupled only-many decoders-only every-one none-needed cannot
  which-places 4 one-spot at-a-turnout every-gap in-the-loop on-the-turntable that-part with-distance anywhere off-track cannot
  last-change 4 track-or-wires supply supply-or-unit vehicle setting a-short new-place time nothing cannot vehicle-opened
  which-way 3 either one-way one-route cannot
  which-setting 3 no short-in-one dead-in-one changing cannot
  analogue-one-at-the-gap 3 went-on turned-round cannot
  lights-then 4 out dim flickers fades-with-trains lit-not-obeying lit-and-obeying cannot
  dim-or-snap 3 dims-first snaps-off neither cannot
  sparks-at-the-gap 3 none spark-or-tick at-a-frog at-a-wheel elsewhere cannot
  dead-since-a-short 3 nothing vehicle unit accessory control cannot
  weather 3 no-matter warm damp much-radio cold cannot
  which-case-hot 4 none unit supply locomotive joint-or-rail wire accessory cannot
  how-it-ran-on 3 stops rolls-on lit-beyond still-across fed-already cannot
  how-many-parts 3 one several cannot
  how-it-protects 3 latches tries-again blinks folds-back cannot
  what-is-between 3 nothing breaker reverser cannot
  detectors-there 3 none some cannot
  common-wire 3 floating joined cannot
  how-many-rails 3 two centre cannot
  what-trains 3 plain sound-or-stored filament-lamps cannot
  how-driven 3 handhelds radio at-the-unit computer cannot
  live-frogs 3 insulated live cannot
  what-feeds-accessories 3 own-supply shares-a-wire from-the-track cannot
  booster-lamp 4 no-lamp ready fault no-signal goes-out-and-on stopped counts cannot
  command-display 3 normal stop-or-programming short dark-or-restarting cannot
  breaker-lamp 3 quiet opened dark cannot
  supply-lamp 3 steady pulses-or-goes-out dark cannot
  read-labels 3 all-fit volts-differ wrong-kind too-few-amps unit-too-big cannot
  put-supplies-back 3 cured no-change cannot
  borrow-supply 3 cured no-change cannot
  exchange-supplies 3 stays goes-along gone cannot
  exchange-units 3 stays goes-along gone cannot
  feed-from-other-unit 3 stays-with-part follows-unit gone cannot
  exchange-cable 3 cured no-change cannot
  track-plug-pulled 3 clears still-a-fault no-fault-before cannot
  unit-bare 3 well with-the-cable alone cannot
  each-stage-alone 3 all-fine one-alone-faults only-together cannot
  move-the-plugs 3 nothing track-plug control-cable supply-plug mains-lead cannot
  lamp-on-the-strip 3 steady dims-or-flickers stays-dark cannot
  cool-air 3 much-longer no-change cannot
  computer-and-earth 3 cured no-change none-there cannot
  unit-settings 4 alike kinds-differ feedback-differs sends-own volts-differ volts-high other-format reverses trip-wrong zero-runs programs-main stays-off cannot trip-low
  count-the-draw 3 few near more shows-much-idle cannot
  vehicle-in-far-part 3 dark lit-but-deaf takes-off runs-poorly runs-well cannot
  look-at-control-cable 3 right-and-firm missing-or-loose wrong-socket looks-damaged cannot
  cable-ends-side-by-side 3 alike mirrored broken cannot
  pull-control-cable 3 nothing-changes goes-dead cannot
  look-at-feed-piece 3 plain capacitor-or-choke cannot
  own-throttle 3 drives-there does-not cannot
  follow-every-wire 3 only-ours old-wiring second-unit cannot
  look-at-feed-wires 4 both-firm none-or-unplugged one-loose other-socket to-other-part device-open switch-off fuse-blown board-plug cannot
  clip-power-to-rails 3 one-rail-lacks both-lack stays-dead cannot
  stand-across 3 trips-at-once sparks-or-ticks nothing cannot
  two-lamps 3 both-dark both-light flickers cannot
  swap-track-wires 3 cured no-change worse cannot
  list-every-path 3 all-cut one-rail-only joint-forgotten touching cannot
  card-through-gaps 3 passes touches not-cut cannot
  jumper-test 3 dead-with-each alive-with-one alive-without cannot
  coach-in-far-part 3 dark faint lit cannot
  other-locomotive-runs-on 3 stops runs-on cannot
  unplug-across-boundary 3 no-change detector lamp-or-decoder frog-wire cannot
  follow-the-red-rail 3 meets-itself meets-the-other cannot
  lamps-at-the-jerk 3 steady blinks cannot
  joint-by-hand 3 smooth clicks wide cannot
  lift-all-vehicles 3 still-there one-brings-it-back all-well cannot
  throw-turnouts 3 no-change trouble-clears part-comes-alive cannot
  unclip-feeders 3 no-change one-feeder one-accessory cannot
  lamp-in-series 3 dark faint bright cannot
  blade-in-turnout-cuts 3 all-through one-closed one-missing cannot
  varnish-the-frog 3 cured no-change cannot
  clean-a-stretch 3 better no-change cannot
  press-the-joiners 3 no-change flickers cannot
  bridge-the-joiner 3 no-change alive-or-better cannot
  clip-thick-pair 3 better no-change cannot
  clip-along-the-bus 3 better no-change cannot
  bright-lamp-along 3 alike dim-everywhere dim-at-the-bus dim-along-the-rails dim-beyond-a-joint cannot
  lamp-along-the-track 3 nothing metal wet charred cannot
  piece-by-itself 3 sound shorted cannot
  look-at-every-joiner 3 all-metal plastic-or-cut cannot
  halve-the-trains 3 cured one-alone-does-it lit-coaches no-change cannot
  move-trains-over 3 cured moves-along no-change cannot
  another-one-there 3 the-same it-runs cannot
  longer-locomotive 3 crosses stops-too cannot
  uncouple 3 was-alone well-apart no-change cannot
  one-or-all 4 all-alike deaf runs-badly another-number shorts-alone runs-off disturbs-others stops-later lights-only cannot acts-otherwise at-one-place
  same-locomotive-in-old-part 3 obeys does-not poorly shorts-there cannot
  on-plain-direct-current 3 runs does-not poorly shorts-there cannot
  vehicle-in-the-hand 4 nothing wheel-wrong wipers loose-inside body-touches parts-out stiff cannot no-grip
  read-its-decoder 3 right other-number double-heading direct-allowed cannot keys-or-delays
  write-anew 3 no-change cured not-taken cannot
  programming-track 3 works cannot-read others-take-it shorts-there cannot
  load-test 3 firm-everywhere weak-far weak-everywhere cannot
  coin-near 3 off-at-once off-late stays-on wrong-one cannot
  coin-far 3 off-at-once stays-on cannot
  short-locomotive-through-loop 4 fine trips-entering trips-leaving long-only trips-at-turnout no-loop cannot
  what-reverses 3 automatic switch two-neighbours none taken-out cannot
  does-it-reverse 3 acts-and-passes silent chatters acts-but-off none-there cannot
  accessories-without-trains 3 right wrong-too not-affected cannot
  accessory-moment 4 after-trip-or-power-up when-trains-run several-at-once only-by-itself always at-random they-are-well cannot
  one-accessory-or-all 4 one two-as-one far-ones all now-one-now-another none cannot
  accessories-own-supply 3 cured no-change cannot
  exchange-accessories 3 no-change with-the-accessory with-the-number cannot
  what-is-reported 3 fine one-occupied long-wires wild absent cannot
  what-the-handhelds-do 4 fine all-dead one-dead restarts weak-bus late-or-lost acts-by-itself computer-silent only-by-computer cannot
  exchange-handhelds 3 all-alike with-the-handheld with-the-socket with-a-device cannot
  without-the-computer 3 cured no-change cannot
  meter-control-bus 3 full low low-far none cannot
  meter-output 3 both screws-only neither only-moments cannot
  meter-volts-there 4 alike lower higher falls none comes-and-goes cannot
  meter-direct-volts 3 about-zero several-volts dead cannot
  meter-same-and-diagonal 3 diagonal-large same-rail-large wanders cannot
  meter-two-stages 3 alike differ-idle differ-loaded cannot
  meter-along-the-way 3 none in-the-bus in-the-rails at-one-joiner at-the-unit cannot
  meter-supply 3 steady collapses wrong-or-none dead cannot
  meter-supply-current 3 well-below near-limit above high-idle cannot
  meter-ohms-between-rails 3 short some-ohms high cannot
  meter-across-the-gap 3 open-on-both one-through both-through some-ohms cannot
  look-at-the-frog 3 plastic fed no-wire cannot
  meter-at-the-frog 3 changes-over plastic none one-setting wrong-pole cannot
  wires-by-eye 3 ample thin-bus few-feeders cannot
  piece-at-programming 3 reads no-change cannot
  meter-while-they-run 3 none in-the-bus in-the-rails at-one-joiner at-the-unit cannot
  bridge-half-round 3 half-round either-way here-and-there cannot
`);

const FIGURES = entriesIn(`${COMMON}
  path
  check-seed
  total
  moving
  older 2 yes no
  supply
  limit
  here
  there
  a
  b
  volts
  amps
  trip
  length
  bus
  feeds
  at
  rail
  state 3 right reversed held dead late rounded
  near
  far
  late
  nanofarads
  ohms
  sent 3 speed-3 speed-55 idle stop cut reset
  joined 3 other-rail negatives nothing
  view 3 bits packet edge
  bit
  short
  others
  breaker
  breaker-time
  unit
  unit-time
  metal
  front
  device 3 none switch automatic
  thrown 2 entry exit
  volts-a
  volts-b
  load-a
  load-b
  limit-a
  limit-b
  reversed 2 yes no
  fault
`);

/** The names that the address of a page has. */
export function namesOf(page: string): readonly Entry[] {
  if (page.startsWith('work-it-out/')) return PLANNING;
  return page.startsWith('put-it-right/') ? WALK : FIGURES;
}
