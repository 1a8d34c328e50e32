/** Classes of the demo studio by weekly slot, one text a week, the oldest first; all composed for it. */
export const demoClasses: Readonly<Record<string, readonly string[]>> = {
  'mon-evening': [
    `Squat & Press, 45 min, level 2, 14 people, Mill Room
warm-up 6:00: march, bodyweight squat, arm circles
straight x4, 40/35
goblet squat
dumbbell shoulder press
rest 75, explain
circuit x4, 45/20
reverse lunge alternating
push-up
dead bug
rest 60
tabata
jumping jack
mountain climber
cool-down to the end`,
    `Lower Ladder, 45 min, level 2, 14 people, Mill Room
warm-up 6:00: march, hip hinge
straight x4, 45/45
goblet squat
rest 60, explain
ladder 2 to 10 step 2
squat to press
push-up
rest 90
circuit x4, 45/20
reverse lunge alternating
plank
side plank
rest 60
finisher x2, 40/20
mountain climber
high knees
cool-down to the end`,
    `Squat & Push, 45 min, level 2, 14 people, Mill Room
warm-up 7:00: march, arm circles
straight x3, 45/30
goblet squat
dumbbell floor press
rest 60, explain
emom 12
8 push-up
10 goblet squat
rest 60
circuit x2, 40/20
reverse lunge alternating
dead bug
cool-down to the end`,
  ],
  'tue-early': [
    `Wake Up, 30 min, level 1, 9 people, Loft
warm-up 5:00: march, arm circles
circuit x4, 30/15
bodyweight squat
knee push-up
glute bridge
plank
rest 45
finisher x2, 30/15
jumping jack
march
cool-down to the end`,
    `First Light, 30 min, level 1, 9 people, Loft
warm-up 5:00: march, hip hinge
circuit x4, 40/20
bodyweight squat
incline push-up
dead bug
knee side plank
cool-down to the end`,
    `Kettle On, 30 min, level 1, 9 people, Loft
warm-up 5:00: march
emom 12
10 bodyweight squat
8 knee push-up
12 glute bridge
rest 60
circuit x2, 30/15
plank
jumping jack
cool-down to the end`,
  ],
  'wed-noon': [
    `Noon Minutes, 40 min, level 2, 10 people, Loft
warm-up 6:00: march, arm circles
emom 12
8 push-up
12 dead bug
10 goblet squat
rest 60
amrap 8, about 5 rounds
8 push-up
8 reverse lunge alternating
cool-down to the end`,
    `Noon Pairs, 40 min, level 2, 10 people, Loft
warm-up 6:00: march, hip hinge
circuit x4, 40/20
goblet squat
push-up
plank
rest 60
tabata x2, between 60
mountain climber
jumping jack
cool-down to the end`,
    `Noon Song, 40 min, level 2, 10 people, Loft
warm-up 6:00: march, arm circles
every 1:30 x8
10 goblet squat
10 push-up
rest 60
song 3:45: bodyweight squat, march
rest 45
circuit x4, 35/15
reverse lunge alternating
dead bug
cool-down to the end`,
  ],
  'thu-evening': [
    `Press & Core, 45 min, level 2, 14 people, Mill Room
warm-up 6:00: march, arm circles
straight x4, 45/45
dumbbell shoulder press
goblet squat
rest 60, explain
circuit x5, 40/20
push-up
reverse lunge alternating
side plank
cool-down to the end`,
    `Station Round, 45 min, level 2, 14 people, Mill Room
warm-up 6:00: march, hip hinge
stations x4, 40/15, 2 each
goblet squat
push-up
dumbbell shoulder press
reverse lunge alternating
plank
dead bug
mountain climber
cool-down to the end`,
    `Thursday Supers, 45 min, level 2, 14 people, Mill Room
warm-up 6:00: march, arm circles
circuit x5, 40/40
goblet squat + push-up
reverse lunge alternating + dead bug
rest 60
finisher x3, 40/20
squat to press
plank
cool-down to the end`,
  ],
  'sat-long': [
    `Long Saturday, 60 min, level 2, 16 people, Mill Room
warm-up 8:00: march, hip hinge, arm circles
straight x4, 40/60
goblet squat
dumbbell floor press
rest 90, explain
circuit x4, 45/20
reverse lunge alternating
bent-over row
dead bug
side plank
rest 60
for time, cap 8:00
20 bodyweight squat
20 mountain climber
cool-down to the end`,
    `Saturday Partners, 60 min, level 2, 16 people, Mill Room
warm-up 8:00: march, arm circles
circuit x5, 40/30, in pairs, swap
goblet squat
bent-over row
rest 90
straight x4, 40/45
dumbbell shoulder press
reverse lunge alternating
rest 60
circuit x5, 40/20
dead bug
glute bridge
cool-down to the end`,
    `Saturday Build, 60 min, level 2, 16 people, Mill Room
warm-up 8:00: march, hip hinge
circuit, work 30 40 50 40, rest 25
goblet squat
dumbbell floor press
glute bridge
rest 90
straight x6, 40/50
squat to press
rest 60
circuit x5, 40/20
side plank
dead bug
reverse lunge alternating
cool-down to the end`,
  ],
};
