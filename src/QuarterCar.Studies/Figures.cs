using System.Collections.Immutable;

using QuarterCar.Scenarios;

namespace QuarterCar.Studies;

/// <summary>The figures of a run: what summary.json holds beside title and static figures, SI (physics.md section 6).</summary>
/// <param name="Travel">How the stroke was used.</param>
/// <param name="Counts">One count per event name, in the order of <see cref="QuarterCar.Model.EventNames.All"/>.</param>
/// <param name="Bottoming">Every bump-stop, bottom-out and coil-bind contact, in order of time.</param>
/// <param name="Acceleration">Of the sprung mass.</param>
/// <param name="Tyre">Tyre load.</param>
/// <param name="Energy">The energy account.</param>
/// <param name="Run">How the computation ended and what it took.</param>
public sealed record RunFigures(
    TravelFigures Travel,
    ImmutableArray<KeyValuePair<string, int>> Counts,
    ImmutableArray<ContactFigures> Bottoming,
    AccelerationFigures Acceleration,
    TyreFigures Tyre,
    EnergyFigures Energy,
    RunAccount Run);

/// <summary>Travel figures; null where ride height lies outside the stroke.</summary>
/// <param name="MaxShaftTravel">m.</param>
/// <param name="MinShaftTravel">m.</param>
/// <param name="TravelUse">Largest shaft travel over stroke.</param>
/// <param name="UpTravelUsed">Share of the up-travel from ride height.</param>
/// <param name="DroopUsed">Share of the droop travel from ride height.</param>
/// <param name="MeanShaftTravel">Mean over time, m.</param>
/// <param name="PeakCompressionSpeed">Of the shaft, m/s, positive.</param>
/// <param name="PeakReboundSpeed">Of the shaft, m/s, positive.</param>
/// <param name="TimeInSecondary">With the slider on the stop nut, s.</param>
public sealed record TravelFigures(
    double MaxShaftTravel,
    double MinShaftTravel,
    double TravelUse,
    double? UpTravelUsed,
    double? DroopUsed,
    double MeanShaftTravel,
    double PeakCompressionSpeed,
    double PeakReboundSpeed,
    double TimeInSecondary);

/// <summary>One contact that counts as bottoming.</summary>
/// <param name="Kind">bump_stop, bottom_out or coil_bind.</param>
/// <param name="Time">s, at touch.</param>
/// <param name="Distance">m, at touch; 0 for a drop.</param>
/// <param name="ShaftVelocity">m/s, at touch.</param>
/// <param name="PeakForce">N.</param>
/// <param name="Penetration">Largest, m.</param>
/// <param name="Duration">s.</param>
/// <param name="Energy">Taken while closing, J.</param>
public sealed record ContactFigures(
    string Kind, double Time, double Distance, double ShaftVelocity, double PeakForce, double Penetration, double Duration, double Energy);

/// <summary>Acceleration of the sprung mass, without gravity.</summary>
/// <param name="PeakG">Largest magnitude, g.</param>
/// <param name="RmsG">r.m.s. over the run, g.</param>
/// <param name="WeightedRms">ISO 2631-1 W_k weighted r.m.s., m/s².</param>
/// <param name="DoseValue">Vibration dose value, m/s^1.75.</param>
public sealed record AccelerationFigures(double PeakG, double RmsG, double WeightedRms, double DoseValue);

/// <summary>Tyre load.</summary>
/// <param name="Peak">N.</param>
/// <param name="Least">N.</param>
/// <param name="Airborne">Time in the air, s.</param>
/// <param name="DynamicLoadCoefficient">r.m.s. of force less static, over static.</param>
public sealed record TyreFigures(double Peak, double Least, double Airborne, double DynamicLoadCoefficient);

/// <summary>The energy account of a run, J.</summary>
/// <param name="Residual">What does not close.</param>
/// <param name="ResidualRelative">Over the largest of energy lost, road work and change of stored energy; 0 where all are 0.</param>
/// <param name="Damper">Lost in the damper.</param>
/// <param name="Friction">Lost in friction.</param>
/// <param name="Contacts">Lost in the stops.</param>
/// <param name="Tyre">Lost in the tyre.</param>
/// <param name="RoadWork">Put in by the road.</param>
public sealed record EnergyFigures(
    double Residual, double ResidualRelative, double Damper, double Friction, double Contacts, double Tyre, double RoadWork);

/// <summary>How the computation ended and what it took.</summary>
/// <param name="End">finished, step_too_small, too_many_events or not_finite.</param>
/// <param name="Time">Time reached, s.</param>
/// <param name="Message">One sentence with advice where it did not finish; empty otherwise.</param>
/// <param name="Steps">Accepted steps.</param>
/// <param name="Rejected">Rejected steps.</param>
/// <param name="Evaluations">Evaluations of the equations of motion.</param>
public sealed record RunAccount(string End, double Time, string Message, long Steps, long Rejected, long Evaluations);

/// <summary>A limit held against its figure.</summary>
/// <param name="Figure">Full dotted name.</param>
/// <param name="Largest">Largest allowed.</param>
/// <param name="Value">What came out; null where the figure does not apply.</param>
/// <param name="Broken">True where the value is above the limit.</param>
public sealed record LimitVerdict(string Figure, double Largest, double? Value, bool Broken);

/// <summary>One row of events.csv, SI.</summary>
/// <param name="Event">Name as in <see cref="QuarterCar.Model.EventNames"/>.</param>
/// <param name="Time">s.</param>
/// <param name="Distance">m.</param>
/// <param name="ShaftTravel">m.</param>
/// <param name="ShaftVelocity">m/s.</param>
/// <param name="Contact">Peak force, penetration, duration, energy on the touch row of a contact; null elsewhere.</param>
public sealed record EventRow(string Event, double Time, double Distance, double ShaftTravel, double ShaftVelocity, ContactFigures? Contact);

/// <summary>One run: what was asked, what it stands like, how it moved, what came out. Immutable; writers only read it.</summary>
/// <param name="Scenario">What was asked.</param>
/// <param name="Standing">Standing figures and the model they stand on.</param>
/// <param name="Track">The motion: steps and events, to be sampled at any time.</param>
/// <param name="Figures">Figures of the run.</param>
/// <param name="Events">Rows of events.csv, in order of time.</param>
/// <param name="Limits">Limits held against their figures.</param>
/// <param name="Warnings">Of reading, standing and running, joined.</param>
public sealed record RunResult(
    Scenario Scenario,
    StandingResult Standing,
    Track Track,
    RunFigures Figures,
    ImmutableArray<EventRow> Events,
    ImmutableArray<LimitVerdict> Limits,
    ImmutableArray<Warning> Warnings);
