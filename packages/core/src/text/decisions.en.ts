/** English of decisions not to act, and of why. */
import type { Wording } from './types.ts';

export const decision: Wording['decision'] = {
  'not-treated': 'not to treat',
  'not-scouted': 'not to go and look',
};

export const decisionReason: Wording['decisionReason'] = {
  'low-for-this-farm': 'the catch is low for this farm',
  'sample-below': 'a sample found less than its figure',
  'other-species': 'the moths are of another species',
  'stage-not-at-risk': 'the crop is not at a stage at risk',
  'harvest-near': 'harvest is near',
  'label-limit': 'the label allows no more',
  weather: 'the weather does not allow it',
  'natural-enemies': 'natural enemies are at work',
  cost: 'it costs more than it saves',
  'loss-accepted': 'the loss is accepted',
  adviser: 'a licensed adviser advised so',
  other: 'another reason',
};
