import type { VersionCause } from './plan-life.ts';

type Caused = { readonly version: number; readonly cause: VersionCause };

/** Versions with content of their own, in the order made, and the place where the plan stands now. */
type Line = { readonly versions: readonly number[]; readonly place: number };

/** The version that undo restores, by appending it again; undefined at the first. `versions`: oldest first. */
export function undoTarget(versions: readonly Caused[]): number | undefined {
  const { versions: line, place } = lineOf(versions);
  return place > 0 ? line[place - 1] : undefined;
}

/** The version that redo restores; undefined where nothing is undone, or something new was made since. */
export function redoTarget(versions: readonly Caused[]): number | undefined {
  const { versions: line, place } = lineOf(versions);
  return line[place + 1];
}

/** The first version, where the plan stands on another one. */
export function firstTarget(versions: readonly Caused[]): number | undefined {
  const { versions: line, place } = lineOf(versions);
  return place > 0 ? line[0] : undefined;
}

/** The versions that the plan is made of as it stands, none of them undone, in the order made. */
export function standingVersions(versions: readonly Caused[]): readonly number[] {
  const { versions: line, place } = lineOf(versions);
  return line.slice(0, place + 1);
}

/** The edits that stand since the class was last written, as versions, in the order made. */
export function editsSinceWritten(versions: readonly Caused[]): readonly number[] {
  const standing = standingVersions(versions);
  const isEdit = (version: number) =>
    versions.some((each) => each.version === version && each.cause.kind === 'edit');
  return standing.slice(standing.findLastIndex((version) => !isEdit(version)) + 1);
}

function lineOf(versions: readonly Caused[]): Line {
  return versions.reduce<Line>(walk, { versions: [], place: -1 });
}

function walk({ versions, place }: Line, { version, cause }: Caused): Line {
  switch (cause.kind) {
    case 'written':
    case 'edit':
      return { versions: [...versions.slice(0, place + 1), version], place: place + 1 };
    case 'undo':
    case 'redo':
      return { versions, place: versions.indexOf(cause.restores) };
  }
}
