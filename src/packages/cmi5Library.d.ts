/** The part of @rusticisoftware/cmi5 that is used; the package has no types of its own. */
declare module '@rusticisoftware/cmi5' {
  interface Score {
    readonly scaled: number;
  }
  interface Statement {
    readonly id: string;
  }
  class Cmi5 {
    constructor(launch: string);
    includeSourceActivity(isIncluded: boolean): void;
    start(): Promise<void>;
    setAuth(header: string): void;
    getAuth(): string;
    loadLMSLaunchData(): Promise<void>;
    loadLearnerPrefs(): Promise<void>;
    getEndpoint(): string;
    getFetch(): string;
    getActor(): unknown;
    getActivityId(): string;
    getRegistration(): string;
    getLaunchMode(): string;
    getMasteryScore(): number | null;
    getReturnURL(): string | null;
    completed(): Promise<unknown>;
    passed(score: Score): Promise<unknown>;
    failed(score: Score): Promise<unknown>;
    terminatedStatement(): Statement;
  }
  export = Cmi5;
}
