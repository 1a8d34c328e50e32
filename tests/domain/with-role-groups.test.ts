import { describe, expect, test } from 'vitest';
import { defaultSettings, type Settings } from '../../domain/settings.ts';
import { maySet } from '../../domain/who-may.ts';
import { groupsWithRole, withRoleGroups } from '../../domain/with-role-groups.ts';

const settings: Settings = {
  ...defaultSettings,
  headCoaches: ['U1', 'U2'],
  roleGroups: { headCoaches: 'S1', trustedInstructors: 'S1' },
};

describe('roles by user group', () => {
  test('stand beside those named, each person once', () => {
    expect(withRoleGroups(settings, new Map([['S1', ['U2', 'U3']]]))).toEqual({
      ...settings,
      headCoaches: ['U1', 'U2', 'U3'],
      trustedInstructors: ['U2', 'U3'],
    });
  });

  test('a group nobody knows the people of gives no role, and without groups nothing changes', () => {
    expect(withRoleGroups(settings, new Map([['S9', ['U3']]]))).toEqual({
      ...settings,
      trustedInstructors: [],
    });
    expect(withRoleGroups(defaultSettings, new Map([['S1', ['U3']]]))).toEqual(defaultSettings);
  });

  test('each group once', () => {
    expect(groupsWithRole(settings)).toEqual(['S1']);
    expect(groupsWithRole(defaultSettings)).toEqual([]);
  });

  test('an emptied group of head coaches opens the settings to nobody', () => {
    const byGroupAlone = { ...defaultSettings, roleGroups: { headCoaches: 'S1' } };
    expect(maySet(withRoleGroups(byGroupAlone, new Map()), 'U1')).toBe(false);
    expect(maySet(withRoleGroups(byGroupAlone, new Map([['S1', ['U1']]])), 'U1')).toBe(true);
    expect(maySet({ ...defaultSettings, roleGroups: { trustedInstructors: 'S1' } }, 'U1')).toBe(true);
  });
});
