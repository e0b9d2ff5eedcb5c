/** A clip that can't be read, with the reason as people are told: "it is empty". */
export class Unreadable extends Error {}
