using System.Collections.Immutable;

using QuarterCar.Model;
using QuarterCar.Model.Statics;
using QuarterCar.Scenarios;

namespace QuarterCar.Studies;

/// <summary>Remarks on how a corner stands, each with a stable code and one sentence that says what to do; joined from their themes, what was not checked last.</summary>
internal static class StandingWarnings
{
    /// <summary>What every theme looks at.</summary>
    /// <param name="Corner">The corner.</param>
    /// <param name="Figures">Its standing figures.</param>
    /// <param name="Springs">One row a spring.</param>
    /// <param name="Fit">Null without a body.</param>
    /// <param name="Units">For the numbers in the words.</param>
    internal sealed record Subject(Corner Corner, StandingFigures Figures, ImmutableArray<SpringStanding> Springs, FitFigures? Fit, UnitSystem Units)
    {
        public CoiloverData Coilover => Corner.Data.Coilover;

        public BodyData? Body => Coilover.Body;

        public string Length(double metres) => Words.Length(metres, Units);

        public string Force(double newtons) => Words.Force(newtons, Units);
    }

    /// <summary>The remarks.</summary>
    /// <param name="subject">The corner as it stands.</param>
    /// <param name="cases">Its load cases, as they stand.</param>
    public static IEnumerable<Warning> Of(Subject subject, IEnumerable<(string Name, Corner Corner, StandingFigures Figures)> cases) =>
    [
        .. SpringWarnings.Of(subject),
        .. FitWarnings.Of(subject),
        .. PlaceWarnings.Of(subject.Corner, subject.Figures),
        .. cases.SelectMany(c => PlaceWarnings.Of(c.Corner, c.Figures, c.Name)),
        .. PracticeWarnings.Of(subject),
        .. NotChecked.Of(subject),
    ];
}
