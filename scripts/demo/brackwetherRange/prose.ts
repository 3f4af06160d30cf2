/** Prose of Brackwether Range by file path. */
export const prose: Record<string, string> = {
  "area.md": `
## The valley

Brackwether Stream runs east between two ridges. The south side of the valley faces the sun. The north side lies in shade from mid-afternoon.

## Whose ground

The club holds leave for blocks A, B and C. Stay in your block, also on the way home.

## The roar

Stags call from the slip and the wallow in early April. Voices of men carry the same way, so identify the whole animal.

## Air

Billhook Creek drains cold air from late afternoon. The sunny face holds rising air nearly until sunset.

## Water

Both fords close after rain. There is no bridge.
`,
  "sites/warm-top.md": `
The beech stands above the slip and looks down on the Warm trail. Roars carry here. The air is wrong by late afternoon. The hill falls away as steeply as your shot, so nothing behind the trail stops a bullet. Come by Sled Creek. The spur way walks through the scrub face where stags bed.
`,
  "sites/warm-foot.md": `
The big beech stands below the Warm trail. This face gets the first sun on the range. Air rises early and reaches the trail. Sit at first light and leave soon. Only the long-chain stand goes round this trunk.
`,
  "sites/wallow-side.md": `
The tree looks along the bench to the wallow. A dead limb hangs above the seat. Replace the tree; the place is right. Until then nobody climbs here.
`,
  "sites/tin-saddle.md": `
An open tree on the saddle, well above the bush edge. The general wind rules here, not the slope. Cloud sits in the saddle. The spur way passes Tinker Point where deer bed. Come by the creek if you can.
`,
  "sites/billhook-forks.md": `
The creek forks below two game trails. Sun leaves this tree long before sunset, and the air follows the water down. It is in shade by half past five. Deer come from above, so the evening works. By late morning the air goes up to them. Leave then.
`,
  "sites/flat-west.md": `
The tree stands at the west end of the river flat. The walk in is noisy over stones. Nobody has looked at this tree since December 2025. Look at it in daylight before you trust it. Never sit here with a rifle while Flat East is taken.
`,
  "sites/flat-east.md": `
A short walk along the flat with no water to cross. The bank beyond the clearing lies too far behind most deer to count on. Watch the west side and keep off the hut side. Never sit here with a rifle while Flat West is taken. This is the best first tree for a newcomer.
`,
  "sites/gable-shelf.md": `
Not available: permission ended on 31 January 2027. Ask the landholder before you set foot on block D.
`,
  "trips/roar-clock-change.md": `
Party Kettle has block B for four days. Clocks go back on Sunday morning, so set every watch on Saturday evening. An easterly blows on Saturday, then a wind from the south comes before dark. Monday brings thunder and strong gusts after noon. Nobody climbs then. Four vehicles want three places at the road end on Saturday; the club officer decides.
`,
  "trips/late-roar.md": `
Party Kettle comes back with Isla, who is new. Give her Flat East and a short walk. The wind goes round from the west to the south-east on Friday before dark. On Saturday it blows from the east all day, and no tree in use suits that.
`,
};
