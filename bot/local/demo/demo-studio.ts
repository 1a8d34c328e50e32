import { defaultSettings, type Settings } from '../../../domain/settings.ts';

/** The demo starts here, a Wednesday morning, eleven days before the clocks go back. */
export const demoStart = '2026-10-14T08:00:00.000Z';

/** Three people of an invented studio, by given name only. */
export const demoPeople = {
  instructor: { id: 'U0MIRA', name: 'Mira', role: 'instructor' },
  coach: { id: 'U0TOMAS', name: 'Tomas', role: 'head coach' },
  member: { id: 'U0INES', name: 'Ines', role: 'instructor' },
} as const;

export const demoChannels = {
  team: { id: 'C0TEAM', name: 'team' },
  review: { id: 'C0REVIEW', name: 'class-review' },
} as const;

/** User groups of the workspace; none gives a role until the settings say so. */
export const demoUserGroups = [
  { id: 'S0COACHES', handle: 'coaches', memberIds: [demoPeople.coach.id] },
  { id: 'S0MORNINGS', handle: 'mornings', memberIds: [demoPeople.member.id] },
] as const;

export const demoTeam = { id: 'T0LANTERN', name: 'Lantern Yard' } as const;

/** The settings of the demo studio: rooms with kit in single pieces, the weekly timetable, roles. */
export const demoSettings: Settings = {
  ...defaultSettings,
  zone: 'Europe/Lisbon',
  reviewChannel: demoChannels.review.id,
  teamChannel: demoChannels.team.id,
  headCoaches: [demoPeople.coach.id],
  rooms: [
    {
      name: 'Mill Room',
      kit: {
        dumbbell: 32,
        kettlebell: 16,
        mat: 20,
        bench: 8,
        'long band': 16,
        'mini band': 16,
        step: 12,
        'medicine ball': 8,
        slider: 24,
      },
      capacity: 18,
      areaSquareMetres: 96,
      doorSeconds: 0,
      clearUpSeconds: 0,
      emergencyCard:
        'First aid box and AED: left of the Mill Room door. Address for the call: Lantern Yard, gate 2.',
    },
    {
      name: 'Loft',
      kit: { dumbbell: 20, mat: 12, 'mini band': 12, 'skipping rope': 12, chair: 10, 'suspension strap': 12 },
      capacity: 12,
      areaSquareMetres: 60,
      doorSeconds: 0,
      clearUpSeconds: 0,
    },
  ],
  slots: [
    slot('mon-evening', 'Monday Strong', 'Mon', '18:30', 45, 'Mill Room', demoPeople.instructor.id, 14),
    slot('tue-early', 'Early Circuit', 'Tue', '07:00', 30, 'Loft', demoPeople.member.id, 9),
    slot('wed-noon', 'Noon Intervals', 'Wed', '12:30', 40, 'Loft', demoPeople.instructor.id, 10),
    slot('thu-evening', 'Thursday Strong', 'Thu', '18:30', 45, 'Mill Room', demoPeople.instructor.id, 14),
    slot('sat-long', 'Saturday Long', 'Sat', '10:00', 60, 'Mill Room', demoPeople.member.id, 16),
  ],
  slotHabits: [
    { name: 'Monday and Thursday', slotIds: ['mon-evening', 'thu-evening'] },
    { name: 'Tuesday and Saturday', slotIds: ['tue-early', 'sat-long'] },
  ],
};

function slot(
  id: string,
  name: string,
  weekday: Settings['slots'][number]['weekday'],
  time: string,
  minutes: number,
  room: string,
  instructorId: string,
  people: number,
): Settings['slots'][number] {
  return { id, name, weekday, time, seconds: minutes * 60, room, instructorId, people };
}
