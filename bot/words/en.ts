/** Every sentence for people in English, by stage. */
export const english = {} as const;
