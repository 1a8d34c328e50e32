/** A class of thirty lines, for the benchmark and for whoever needs a long one. */
export const longClass = `Long Haul, 60 min, level 2, 12 people
kit: dumbbells, mats
warm-up 7:00: march, hip hinge, arm circle
straight x3, 40/20
goblet squat
bent-over row
dumbbell shoulder press
say: ribs down, long neck
rest 60, explain
emom 8
8 push-up
10 dead bug
rest 60
circuit x3, 30/15, between rounds 45
reverse lunge alternating
dumbbell floor press + glute bridge
single-arm row split sides
plank
water 60
amrap 6, about 4 rounds
8 deadlift
8 squat to press
10 sit-up
rest 60
tabata
mountain climber
squat jump
rest 45
finisher, 40/10
wall sit
cool-down to the end`;
