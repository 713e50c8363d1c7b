export { bulletinView } from './bulletin.ts';
export * from './bulletin-schema.ts';
export { cellReason } from './cell.ts';
export { momentDates } from './dates.ts';
export { programFlights } from './farm-flights.ts';
export * from './farm-flights-schema.ts';
export { fieldView } from './field.ts';
export * from './field-schema.ts';
export {
  FIRST_STEPS,
  type FirstStep,
  type FirstStepsView,
  firstStepsSchema,
  firstStepsView,
} from './first-steps.ts';
export * from './flights.ts';
export * from './flights-schema.ts';
export { ownFieldsView } from './own-fields.ts';
export * from './own-fields-schema.ts';
export { roundsView } from './planned-rounds.ts';
export * from './planned-rounds-schema.ts';
export { type ProgramHead, programHead, programHeadSchema } from './program.ts';
export { type RoundPlace, type RoundWay, roundAlong, roundPlace, roundStops, roundView, roundWay } from './round.ts';
export { roundLater, roundLengthKm, roundOrder, type WrittenSince } from './round-later.ts';
export * from './round-schema.ts';
export { rulesView } from './rules.ts';
export * from './rules-schema.ts';
export { sampleShown } from './sample-shown.ts';
export * from './schema.ts';
export { scoutingView } from './scouting.ts';
export * from './scouting-schema.ts';
export { type ScoutingSheet, type SheetWanted, scoutingSheets } from './scouting-sheet.ts';
export { type SearchHit, type SearchView, searchSchema, searchView } from './search.ts';
export { seasonView } from './season.ts';
export * from './season-schema.ts';
export { seasonTruthView } from './season-truth.ts';
export { describeSources, type SourceKind, type SourceLine } from './sources.ts';
export { checkOfVisit, trapVisit } from './trap-facts.ts';
export { SAME_PLACE_M, trapsView, trapView } from './traps.ts';
export * from './traps-schema.ts';
export { type WeatherComparison, weatherComparison, weatherComparisonSchema } from './weather-comparison.ts';
export { type WeatherSourcesView, weatherSourcesSchema, weatherSourcesView } from './weather-sources.ts';
export { weekView } from './week.ts';
export * from './week-schema.ts';
export { weekSheetView } from './week-sheet.ts';
export * from './week-sheet-schema.ts';
export { daysLateOn, needsNothing, soonestCheck, type WeekSummary, weekSummary } from './week-summary.ts';
