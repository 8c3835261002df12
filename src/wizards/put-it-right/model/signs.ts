// What can be seen of a trouble, one fact each. `sound`: the value on a layout without trouble. `unaffected`: what is met where the trouble
// does not touch the sign. `stands`: found too while a trouble that comes and goes is well. Source of the words: common practice, no source (judgement). Causes say what they make of each: causes/*.ts.
import type { SignRow } from '../../../engine/index.ts';
import { always, rarely, sometimes, usually } from './words.ts';

/** Signs of which every cause says something. */
export const CORE_SIGNS = [
  // What is wrong, in one line: everything or a part switches off; trains stop and their lights are out; they stand lit or run on and do not
  // obey; slow or dim; a jerk, stutter or flicker; something runs or moves by itself; turnouts or signals act up; something gets hot;
  // an empty track is shown as occupied; handhelds or their bus are dead; a decoder cannot be read; only a lamp or message complains; the
  // fuse or the residual-current switch of the house goes; metal parts tingle; trains too fast, lamps too bright; it only hums, buzzes or ticks;
  // it drives, but keys do other things than they did, lights are wrong, or it starts and stops late; wheels turn and the train does not follow.
  {
    id: 'trouble',
    values: [
      'switches-off',
      'stops-dark',
      'stops-lit',
      'slow-or-dim',
      'jerks',
      'runs-by-itself',
      'accessories-wrong',
      'gets-hot',
      'shown-occupied',
      'handhelds-dead',
      'cannot-be-read',
      'only-shown',
      'none',
      'house-fuse',
      'tingle',
      'fast-or-bright',
      'hums',
      'acts-otherwise',
      'slips',
    ],
    sound: 'none',
    unaffected: { none: always },
  },
  // When it shows. `always`: as long as power is on. `after-a-short`: once a short is cleared, or after something else went off.
  // `in-mid-run`: a train runs, then it stops and stays so. `now-and-then`: no pattern that anybody has found.
  // `while-programming`: while the programming track is in use, or as soon as it was. `creeping`: at walking pace only, and a push helps.
  {
    id: 'when',
    values: [
      'always',
      'at-switching-on',
      'at-the-gap',
      'when-set-on',
      'at-one-place',
      'when-thrown',
      'with-traffic',
      'after-minutes',
      'after-a-short',
      'in-mid-run',
      'now-and-then',
      'while-programming',
      'creeping',
    ],
    sound: 'now-and-then',
    unaffected: { always: sometimes, 'at-one-place': rarely, 'now-and-then': sometimes, 'in-mid-run': rarely },
  },
  // Where it shows. `part`: one whole part, beside its feed too. `far`: the farther from the feed the worse. `spot`: one spot, joint or stretch.
  // `off-track`: with the track unplugged too, or at handhelds and units only. `turntable`: its bridge, or its tracks in some positions.
  {
    id: 'where',
    values: ['everywhere', 'part', 'gaps', 'far', 'spot', 'turnout', 'loop', 'off-track', 'turntable'],
    sound: 'everywhere',
    unaffected: { everywhere: usually, part: rarely, spot: rarely },
  },
  // Which vehicles show it. `kind`: those of one kind, such as lit, sound, metal or short ones. `many`: only many together. `none-needed`: an
  // empty track shows it too. `coupled`: each alone is well, coupled to each other they show it. `one-kind`: several, all with one kind of decoder,
  // drive or wheel. `decoders-only`: all that have a decoder, while an engine without one runs.
  {
    id: 'vehicles',
    values: [
      'every-one',
      'one-only',
      'short-ones',
      'lit-or-long',
      'many',
      'none-needed',
      'coupled',
      'one-kind',
      'decoders-only',
    ],
    sound: 'every-one',
    unaffected: { 'every-one': usually, 'none-needed': rarely },
  },
  // What was done last before it began. `time`: nothing but age, dust, warmth or damp. `a-short`: it began with a short or a derailing.
  // `new-place`: the layout or some modules were set up at another place, such as a hall. `supply`: a supply alone was exchanged, moved or
  // plugged in again; with a unit it is `supply-or-unit`. `vehicle`: another one, other wheels, clean ones, or more of them; opened, for a decoder
  // or a repair, it is `vehicle-opened`.
  {
    id: 'since',
    values: [
      'nothing',
      'track-or-wires',
      'time',
      'supply-or-unit',
      'vehicle',
      'vehicle-opened',
      'setting',
      'a-short',
      'new-place',
      'supply',
    ],
    sound: 'nothing',
    unaffected: {
      nothing: usually,
      'track-or-wires': sometimes,
      time: rarely,
      'supply-or-unit': rarely,
      vehicle: sometimes,
      'vehicle-opened': rarely,
      setting: rarely,
      'new-place': rarely,
      supply: rarely,
    },
  },
  // What goes off when it happens.
  {
    id: 'goes-off',
    values: ['nothing', 'that-part', 'all-at-once', 'one-after-the-other'],
    sound: 'nothing',
    unaffected: { nothing: always },
    group: 'event',
  },
  // How it comes back. `never-off`: nothing went off. `blink`: at once, hardly noticed. `stays`: not at all.
  {
    id: 'comes-back',
    values: ['never-off', 'blink', 'seconds', 'minutes', 'button', 'when-removed', 'stays'],
    sound: 'never-off',
    unaffected: { 'never-off': always },
    group: 'event',
  },
  // What the unit of the part with the trouble shows just then. `restarts`: its lamp goes out and on as at switching on.
  // `only-breaker`: the unit is ready, and a breaker or polarity switcher behind it shows that it has opened. `code`: it blinks or beeps so many
  // times, or names a reason of its own.
  {
    id: 'unit-shows',
    values: ['ready', 'dark', 'fault', 'no-signal', 'restarts', 'stopped', 'only-breaker', 'code'],
    sound: 'ready',
    unaffected: { ready: always },
  },
  // Volts from rail to rail where the trouble is. `low-loaded`: full until something draws current. `moments`: they come and go.
  // `direct`: direct current, since no commands are on them. `high`: more than the scale bears.
  {
    id: 'volts',
    values: ['full', 'low', 'low-loaded', 'none', 'moments', 'direct', 'high'],
    sound: 'full',
    unaffected: { full: always },
    group: 'power',
  },
  // Whether commands arrive there. `other`: those of another unit or throttle. `one-deaf`: they arrive, one locomotive does not take them.
  {
    id: 'commands',
    values: ['arrive', 'none', 'spoiled', 'other', 'one-deaf'],
    sound: 'arrive',
    unaffected: { arrive: always },
    group: 'power',
  },
  // Where a short stands as long as it is there, found by taking things away: vehicles, a turnout's other setting, feeders, the track plug.
  // `weak`: a path below the trip level. `only-shown`: none at all, though a unit says so. `accessory`: gone with one accessory unplugged.
  // `both-on`: each unit is well alone, and only while both feed their parts there is one.
  {
    id: 'short',
    values: ['none', 'vehicle', 'track', 'one-setting', 'feeder', 'unit', 'weak', 'only-shown', 'accessory', 'both-on'],
    sound: 'none',
    unaffected: { none: always },
  },
  // What is hot after a while of running, or just after it cut out. `smoking`: smoke, a smell, too hot to touch, or mains parts damaged.
  {
    id: 'hot',
    values: ['nothing', 'joint-or-rail', 'wire', 'unit', 'supply', 'vehicle', 'accessory', 'smoking'],
    sound: 'nothing',
    unaffected: { nothing: always, unit: rarely },
  },
  // What all trains together draw, against what unit and supply give. `high-idle`: much is drawn with nothing on the track.
  {
    id: 'draw',
    values: ['well-below', 'near-the-limit', 'above', 'high-idle'],
    sound: 'well-below',
    unaffected: { 'well-below': usually, 'near-the-limit': rarely },
  },
] as const satisfies readonly SignRow[];

/** The other signs: a cause that says nothing of one leaves it as on a sound layout. */
export const OTHER_SIGNS = [
  // Whether the bridge of a turntable turned half round changes it at the same track. `half-round`: well one way round, not the other.
  // `some-positions`: dead or shorting in some positions, here and there.
  {
    id: 'bridge',
    values: ['no-matter', 'half-round', 'some-positions'],
    sound: 'no-matter',
    unaffected: { 'no-matter': always },
  },
  // Which way a train goes when it shows.
  { id: 'way', values: ['either', 'one-way', 'one-route'], sound: 'either', unaffected: { either: always } },
  // Which way round the rails of the two parts meet at the gap, both on. `drift`: two units give unlike commands, or not in step.
  { id: 'sides', values: ['agree', 'reversed', 'drift', 'changes'], sound: 'agree', unaffected: { agree: always } },
  // Rail volts of the two parts, idle: alike, or a volt or more apart; or apart only as one of them sags.
  { id: 'step', values: ['none', 'idle', 'loaded'], sound: 'none', unaffected: { none: always } },
  // What joins the two parts though nothing should: with both parts' units unplugged from the rails. `touching`: the rails are cut, and their
  // ends touch in one gap or another, by a burr, a drop of solder, a metal joiner or warmth.
  {
    id: 'cut',
    values: ['both-cut', 'one-joined', 'both-joined', 'faintly-joined', 'touching'],
    sound: 'both-cut',
    unaffected: { 'both-cut': always, 'one-joined': rarely },
  },
  // Where volts are lost with about one ampere flowing.
  {
    id: 'loss',
    values: ['none', 'bus', 'rails', 'joint', 'at-the-unit'],
    sound: 'none',
    unaffected: { none: usually, rails: rarely },
  },
  // How rails and wheels touch. `plain-step`: a wheel catches. `wide`: a dead piece longer than some pick-ups reach. `flickers`: pressing the joint helps.
  // `insulated`: a plastic joiner or a cut where the rail should go on.
  {
    id: 'contact',
    values: ['good', 'dirty', 'plain-step', 'wide', 'flickers', 'insulated'],
    sound: 'good',
    unaffected: { good: usually, dirty: sometimes },
    stands: true,
  },
  // What one finds along the track wires of the part. `device-open`: a detector or breaker. `board-plug`: out or crossed between two boards.
  {
    id: 'feed-wires',
    values: [
      'right',
      'missing',
      'one-loose',
      'wrong-socket',
      'to-other-part',
      'device-open',
      'switch-off',
      'fuse-blown',
      'board-plug',
    ],
    sound: 'right',
    unaffected: { right: always },
    stands: true,
  },
  // What one finds along the control cable.
  {
    id: 'link',
    values: ['right', 'missing', 'wrong-socket', 'damaged', 'mirrored'],
    sound: 'right',
    unaffected: { right: always },
    stands: true,
  },
  // A capacitor, choke or unknown box where the wires reach the rails.
  { id: 'feed-piece', values: ['plain', 'capacitor'], sound: 'plain', unaffected: { plain: always }, stands: true },
  // Old or further wiring that still ends at these rails.
  {
    id: 'old-wiring',
    values: ['none', 'dead-wires', 'live-source'],
    sound: 'none',
    unaffected: { none: always },
    stands: true,
  },
  // Swapping the two track wires of the new part, everything off.
  {
    id: 'swap',
    values: ['no-change', 'cured', 'worse'],
    sound: 'worse',
    unaffected: { 'no-change': sometimes, worse: usually },
    stands: true,
  },
  // With what the trouble goes when things are exchanged for each other. `gone`: it does not come back at all, since a plug was moved for it.
  {
    id: 'goes-with-unit',
    values: ['stays', 'goes-along', 'gone'],
    sound: 'stays',
    unaffected: { stays: always },
    stands: true,
  },
  {
    id: 'goes-with-supply',
    values: ['stays', 'goes-along', 'gone'],
    sound: 'stays',
    unaffected: { stays: always },
    stands: true,
  },
  {
    id: 'goes-with-cable',
    values: ['stays', 'goes-along'],
    sound: 'stays',
    unaffected: { stays: always },
    stands: true,
  },
  // Running fewer trains, whichever they are; or one that does it alone.
  {
    id: 'fewer',
    values: ['no-help', 'helps', 'one-does-it', 'lit-do-it'],
    sound: 'no-help',
    unaffected: { 'no-help': always },
    stands: true,
  },
  // Free air and a rest.
  { id: 'cooling', values: ['no-help', 'helps'], sound: 'no-help', unaffected: { 'no-help': always }, stands: true },
  // Just before it cuts out.
  {
    id: 'before',
    values: ['not-off', 'dims', 'snaps'],
    sound: 'not-off',
    unaffected: { 'not-off': usually, snaps: sometimes, dims: rarely },
  },
  // The lamp of the supply, and a room lamp on the same socket strip.
  { id: 'supply-lamp', values: ['steady', 'pulses', 'dark'], sound: 'steady', unaffected: { steady: always } },
  { id: 'mains', values: ['steady', 'dips', 'off'], sound: 'steady', unaffected: { steady: always } },
  // Labels of supplies and units against each other and against the scale.
  {
    id: 'labels',
    values: ['fit', 'volts-differ', 'wrong-kind', 'too-few-amps', 'unit-too-big'],
    sound: 'fit',
    unaffected: { fit: usually, 'volts-differ': rarely, 'too-few-amps': rarely, 'unit-too-big': rarely },
    stands: true,
  },
  // Settings of the units, read on displays or in their menus. `zero-runs`: something is driven on address 0. `programs-main`: programming
  // goes out to the whole layout. `stays-off`: it is told to wait for a button after a short.
  // `trip-wrong`: too high, too slow or after the one behind it; `trip-low`: below what trains draw, or faster than they fill up.
  {
    id: 'settings',
    values: [
      'right',
      'kinds-differ',
      'feedback-differs',
      'sends-own',
      'volts-low',
      'volts-high',
      'other-format',
      'reverses',
      'trip-wrong',
      'zero-runs',
      'programs-main',
      'stays-off',
      'trip-low',
    ],
    sound: 'right',
    unaffected: { right: usually, 'kinds-differ': sometimes, 'feedback-differs': rarely },
    stands: true,
  },
  // How the protection acts on a short made on purpose, near the unit and far out.
  {
    id: 'protection-near',
    values: ['at-once', 'late', 'not', 'wrong-one'],
    sound: 'at-once',
    unaffected: { 'at-once': always },
    stands: true,
  },
  {
    id: 'protection-far',
    values: ['at-once', 'not'],
    sound: 'at-once',
    unaffected: { 'at-once': usually, not: rarely },
    stands: true,
  },
  // Ohms from rail to rail, everything off and unplugged, vehicles off.
  { id: 'ohms', values: ['open', 'some', 'short'], sound: 'open', unaffected: { open: usually, some: sometimes } },
  // What the reversing section does.
  {
    id: 'loop',
    values: ['no-loop', 'fine', 'trips-entering', 'trips-leaving', 'trips-long-only', 'at-its-turnout'],
    sound: 'no-loop',
    unaffected: { 'no-loop': usually, fine: sometimes },
  },
  // What swaps its rails. `taken-out`: there was an automatic one, and it was moved or taken out.
  {
    id: 'reverser',
    values: ['none-there', 'acts', 'silent', 'chatters', 'acts-but-off', 'taken-out'],
    sound: 'none-there',
    unaffected: { 'none-there': usually, acts: sometimes },
  },
  // What a turnout's setting changes. `changing`: now well and now not with one and the same setting, as when a contact or a blade hardly touches.
  {
    id: 'setting-matters',
    values: ['no', 'short-in-one', 'dead-in-one', 'changing'],
    sound: 'no',
    unaffected: { no: always },
  },
  // Turnouts, signals and other accessories. `other-one`: another one moves than was called, or two move as one.
  {
    id: 'accessories',
    values: [
      'fine',
      'with-trains',
      'after-trips',
      'several-at-once',
      'one-always',
      'far-ones',
      'all-always',
      'at-random',
      'sensing-only',
      'other-one',
    ],
    sound: 'fine',
    unaffected: { fine: always, 'at-random': rarely },
  },
  // The accessory with the trouble and a sound neighbour exchanged at their decoder: with what the trouble goes.
  {
    id: 'accessory-exchanged',
    values: ['stays-everywhere', 'with-the-accessory', 'with-the-number'],
    sound: 'stays-everywhere',
    unaffected: { 'stays-everywhere': always },
    stands: true,
  },
  // Accessories fed from a supply of their own, for a test.
  {
    id: 'accessories-apart',
    values: ['no-change', 'cured'],
    sound: 'no-change',
    unaffected: { 'no-change': always },
    stands: true,
  },
  // Track occupancy reports. `wild`: many change at once. `long-wires`: only tracks with the longest wires stay occupied.
  {
    id: 'reports',
    values: ['fine', 'one-occupied', 'wild', 'absent', 'long-wires'],
    sound: 'fine',
    unaffected: { fine: always },
  },
  // What makes it well when it is unplugged, of the things that hang between the units and the rails or on two parts at once.
  {
    id: 'unplugging',
    values: ['no-change', 'detector', 'lamp-or-decoder', 'frog-wire'],
    sound: 'no-change',
    unaffected: { 'no-change': always },
    stands: true,
  },
  // Handhelds, radio, control bus, computer. `comes-and-goes`: now and then a press is late or lost. `computer-silent`: only the computer has no
  // connection. `only-by-computer`: only what the computer orders goes wrong; ordered by hand it is right.
  {
    id: 'control',
    values: [
      'fine',
      'all-dead',
      'one-dead',
      'restarts',
      'weak-bus',
      'acts-by-itself',
      'comes-and-goes',
      'computer-silent',
      'only-by-computer',
    ],
    sound: 'fine',
    unaffected: { fine: always },
  },
  // A handheld at another socket, another handheld at this one: with what the trouble goes. `with-a-device`: all are well once one certain device is
  // off the bus.
  {
    id: 'handheld-exchanged',
    values: ['all-alike', 'with-the-handheld', 'with-the-socket', 'with-a-device'],
    sound: 'all-alike',
    unaffected: { 'all-alike': always },
    stands: true,
  },
  // Volts on the control bus, against those beside the command station when all is well. `low-far`: full there, low farther out.
  {
    id: 'bus-volts',
    values: ['full', 'low', 'low-far', 'none'],
    sound: 'full',
    unaffected: { full: always },
  },
  // Whether what stands on live rails is joined to them all the time: by wheels, wipers and wires of its own. Where it breaks, lights wink with it.
  {
    id: 'wheel-contact',
    values: ['holds', 'breaks'],
    sound: 'holds',
    unaffected: { holds: always },
    group: 'power',
  },
  // One locomotive against the others, and on other track. `runs-off`: it drives without a command. `disturbs-others`: it runs, others or
  // turnouts do not while it is there. `stops-later`: it obeys, and after a while it stops or is deaf.
  // `lights-only`: its lights or sound obey, its motor does not. `acts-otherwise`: it drives, with altered keys, lights or delays.
  // `at-one-place`: one has it at one place, and is well everywhere else.
  {
    id: 'one-loco',
    values: [
      'like-the-others',
      'deaf',
      'runs-badly',
      'another-number',
      'shorts-alone',
      'obeys-on-dc-only',
      'runs-off',
      'disturbs-others',
      'stops-later',
      'lights-only',
      'acts-otherwise',
      'at-one-place',
    ],
    sound: 'like-the-others',
    // Who has one locomotive, or runs one there, has seen it with that one.
    unaffected: { 'like-the-others': always, 'at-one-place': sometimes },
  },
  // This one vehicle in the hand, unpowered. `wheel-wrong`: a wheelset turned round, shifted or out of gauge. `wipers`: dirty, bent or not
  // touching. `loose-inside`: a wire, tab, plug or gear loose, cracked or touching. `body-touches`: metal body or coupling on a rail's side.
  // `parts-out`: the small parts at the motor are missing. `stiff`: wheels or rods hardly turn. `no-grip`: a traction tyre is worn or gone, or wheels
  // are oily.
  {
    id: 'vehicle-in-hand',
    values: ['nothing', 'wheel-wrong', 'wipers', 'loose-inside', 'body-touches', 'parts-out', 'stiff', 'no-grip'],
    sound: 'nothing',
    unaffected: { nothing: usually, wipers: sometimes },
    stands: true,
  },
  // What is found in the decoder of this locomotive or accessory and under its number in the station. `other-number`: not the number it is
  // called by. `direct-allowed`: it may run on direct current. `keys-or-delays`: keys, lights, delays or speeds that nobody here has set.
  {
    id: 'decoder-settings',
    values: ['right', 'other-number', 'double-heading', 'direct-allowed', 'keys-or-delays'],
    sound: 'right',
    unaffected: { right: usually, 'direct-allowed': sometimes, 'keys-or-delays': rarely },
    stands: true,
  },
  // Number and settings of this locomotive or accessory written anew.
  {
    id: 'written-anew',
    values: ['no-help', 'cured', 'not-taken'],
    sound: 'no-help',
    unaffected: { 'no-help': always },
    stands: true,
  },
  // The programming track.
  {
    id: 'programming',
    values: ['works', 'cannot-read', 'others-take-it', 'shorts-there'],
    sound: 'works',
    unaffected: { works: always, 'cannot-read': rarely },
  },
  // Sparks or ticks.
  {
    id: 'sparks',
    values: ['none', 'at-the-gap', 'at-a-frog', 'at-a-wheel', 'elsewhere'],
    sound: 'none',
    unaffected: { none: always },
  },
  // A locomotive sent over the gap while the new part is not fed. `rolls-on`: a little, by what it stores. `lit-beyond`: it drives on as if nothing
  // were cut.
  {
    id: 'unfed-test',
    values: ['stops', 'rolls-on', 'lit-beyond', 'still-across', 'fed-already'],
    sound: 'stops',
    unaffected: { stops: always },
  },
  // What else joins the units: a computer's cable, an earth pin.
  {
    id: 'other-path',
    values: ['none-matters', 'unplugging-cures'],
    sound: 'none-matters',
    unaffected: { 'none-matters': always },
    stands: true,
  },
  // Which plug flickers when it is moved a little. `supply-plug`: the plug from supply to unit is out or loose, or the unit's switch is off.
  {
    id: 'loose-plug',
    values: ['none', 'track-plug', 'control-cable', 'mains-lead', 'supply-plug'],
    sound: 'none',
    unaffected: { none: always },
    stands: true,
  },
  // Which rail of the dead stretch lacks power: clipping a live wire to one of them brings it back, or only to both.
  { id: 'dead-rail', values: ['none', 'one', 'both'], sound: 'none', unaffected: { none: always } },
  // The cuts inside turnouts, crossings and their ties, seen or felt with a thin blade: through, closed again, or never made.
  // Turnouts that need no cuts have none, and lie in many a track.
  {
    id: 'turnout-cuts',
    values: ['right', 'closed', 'missing'],
    sound: 'right',
    unaffected: { right: always, missing: rarely },
    stands: true,
  },
  // Nail varnish on the two rails where they come closest at the frog.
  {
    id: 'varnish',
    values: ['no-change', 'cured'],
    sound: 'no-change',
    unaffected: { 'no-change': always },
    stands: true,
  },
  // One rail followed with tape right round by every route: does it ever meet the other one?
  {
    id: 'red-rail',
    values: ['meets-itself', 'meets-the-other'],
    sound: 'meets-itself',
    unaffected: { 'meets-itself': usually, 'meets-the-other': sometimes },
    stands: true,
  },
  // Some of the trains moved to the other part: it is well, or it goes along with them.
  {
    id: 'moved-trains',
    values: ['no-change', 'cured', 'goes-along'],
    sound: 'no-change',
    unaffected: { 'no-change': always },
    stands: true,
  },
  // Volts at the supply's own terminals. `collapses`: they fall far down or pulse at work. `wrong`: of another kind or far off its label.
  {
    id: 'supply-volts',
    values: ['steady', 'collapses', 'wrong', 'none'],
    sound: 'steady',
    unaffected: { steady: always },
  },
  // What a lamp shows along the whole track, at its sides and below: something metal at both rails; wet, freshly glued or plastered; charred.
  {
    id: 'along-the-track',
    values: ['nothing', 'metal', 'wet', 'charred'],
    sound: 'nothing',
    unaffected: { nothing: always, metal: rarely, wet: rarely },
    stands: true,
  },
  // What feeds the frog of the turnout with the trouble. `fed`: one rail or the other, as the blades lie, whether by blades, wire or contact.
  // `plastic`: there is nothing to feed. `none`: metal, cut off all round, without power. `one-setting`: without power with one setting.
  // `wrong-pole`: it has that of the rail from which the blade lies open.
  {
    id: 'frog-feed',
    values: ['fed', 'plastic', 'none', 'one-setting', 'wrong-pole'],
    sound: 'fed',
    unaffected: { fed: usually, plastic: usually, none: rarely },
    stands: true,
  },
  // The suspected crossing or other piece of track by itself, off the layout: its routes measured, or the layout tried without it.
  {
    id: 'piece-alone',
    values: ['sound', 'shorted'],
    sound: 'sound',
    unaffected: { sound: always },
  },
  // What has been dead, or not itself, ever since a short.
  {
    id: 'dead-since',
    values: ['nothing', 'vehicle', 'unit', 'accessory', 'control'],
    sound: 'nothing',
    unaffected: { nothing: always },
  },
  // Whether the weather or the room matters: it comes when it is warm, or when it is damp or just after glue and water, where there is much radio, or in the cold.
  {
    id: 'weather',
    values: ['no-matter', 'warm', 'damp', 'much-radio', 'cold'],
    sound: 'no-matter',
    unaffected: { 'no-matter': always },
  },
  // One locomotive on a loose piece of track, wired straight to the programming output.
  {
    id: 'programming-piece',
    values: ['no-help', 'reads'],
    sound: 'no-help',
    unaffected: { 'no-help': always, reads: rarely },
  },
] as const satisfies readonly SignRow[];

export const SIGNS = [...CORE_SIGNS, ...OTHER_SIGNS] as const;
export type SignId = (typeof SIGNS)[number]['id'];
export type CoreSignId = (typeof CORE_SIGNS)[number]['id'];
export type SignValue<Id extends SignId> = Extract<(typeof SIGNS)[number], { id: Id }>['values'][number];
