/** A stage of life that reference intakes are given for, as data/parameters/people/life-stages.yaml lists it. */
export interface LifeStage {
  readonly id: string;
  readonly label: string;
}
