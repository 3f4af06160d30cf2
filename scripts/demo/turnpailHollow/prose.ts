/** Prose of Turnpail Hollow by file path. */
export const prose: Record<string, string> = {
  "area.md": `
## The hollow

Turnpail Hollow opens south. Wendle Ridge closes the other three sides. Deer lie up on the laurel slope and on the end of Drum Spur. They come down to acorns, apples and the old landing.

## Air

On a clear night cold air runs down both gullies and out along the Run. The west side gets sun first, so its air turns first.

## Getting about

Cross Turnpail Run at Slab Ford or on the stepping stones. After heavy rain do neither. Park two vehicles at the bottom and keep the gate shut.

## Neighbors

One house stands outside the south-east line. Keep rifles well away from it, and talk quietly on the road.

## What we do not know

Nobody has sat the gully in a north wind.
`,
  "sites/upper-bench.md": `
The oak stands a short stone's throw above the bench trail. On a wind from the east your scent goes up the hill behind you. Once shade comes, the air slides down to the trail. Be down before that, or stay at home. Come in by Tannery Spur; the ridge way walks through their beds.
`,
  "sites/lower-bench.md": `
The cherry stands just below the bench trail. Cold air carries your scent down the hill, away from the trail. Air climbs to the trail by ten on clear days. Be gone before that. Nobody has sounded the trunk or dug at the roots yet.
`,
  "sites/orchard-corner.md": `
The ash looks along the upper rows of the old orchard. Deer come down the Drum trail in the last hour. A limb has hung up above the seat since a storm in August. Do not climb this tree. Choose a sound tree within a few yards, or leave the corner alone.
`,
  "sites/hatch-gap.md": `
The pine stands in the saddle of Hatch Gap, with a short dry walk from the north. Wind funnels here. Trust the ribbon, not the forecast. Bucks cross the saddle in the middle of the day.
`,
  "sites/icehouse-gully.md": `
The hemlock stands on the edge of the gully. This is a frost pocket. Dress for it. Most deer pass here at night. The water covers the noise of your walk in.
`,
  "sites/landing-west.md": `
The maple stands on the west edge of the old landing. Deer drop off the end of the bench trail and stop here before dark. Use no rifle here if Landing East is taken. The stepping stones are slick with frost.
`,
  "sites/landing-east.md": `
A low, easy tree with a short walk. You look up across the landing. Deer on the far lip stand against the sky, and nothing behind them stops a bullet. Only over the middle of the clearing does the bank stand close behind. If someone sits Landing West, this tree is for watching only. Expect noise on the track at nine.
`,
  "trips/bow-clock-change.md": `
Two of us hunt with the bow over the night when clocks go back. Set every watch on Saturday evening. A wind from the south is due on Saturday before dark. Sunday brings thunder after noon, so nobody climbs then. The forecast for Monday is three days old; look again before you go.
`,
  "trips/rifle-first-week.md": `
The rifle opens on Saturday, November 13. Friday and Sunday are for the bow. Landing West and Landing East face each other. Only one of them may be used while a rifle is in the hollow. Garrick is new: give him a short walk and a dry way. There is no forecast for Monday.
`,
};
