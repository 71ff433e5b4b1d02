using System.Collections.Immutable;

using QuarterCar.Model;
using QuarterCar.Model.Statics;
using QuarterCar.Scenarios;
using QuarterCar.Scenarios.SpringLists;

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
    public static IEnumerable<Warning> Of(Subject subject, IReadOnlyList<(string Name, Subject Subject)> cases)
    {
        Warning[] own = [.. SpringWarnings.Of(subject), .. FitWarnings.Of(subject)];
        return
        [
            .. own,
            .. PlaceWarnings.Of(subject.Corner, subject.Figures),
            .. cases.SelectMany(c => InCase(c.Name, c.Subject, own)),
            .. DamperWarnings.Of(subject),
            .. PracticeWarnings.Of(subject),
            .. Invented(subject.Coilover.Springs),
            .. NotChecked.Of(subject),
        ];
    }

    // A press on a rate of the page or a step of tweak fits such a spring, and a file or sheet of it no longer shows where it comes from.
    private static IEnumerable<Warning> Invented(SpringSetData set)
    {
        string[] places = [.. set.Placed.Where(p => InventedSprings.Has(p.Spring)).Select(p => p.Place)];
        if (places.Length > 0)
            yield return new("invented_springs", $"The figures of the {string.Join(" and the ", places)} spring are those of the list that ships, which is invented: nobody makes it, so take a maker's figures before ordering.");
    }

    // A case may change preload or springs as well as weight: what it brings that the scenario itself has not said already.
    private static IEnumerable<Warning> InCase(string name, Subject inCase, Warning[] own) =>
    [
        .. SpringWarnings.Of(inCase).Concat(FitWarnings.Of(inCase)).Except(own)
            .Select(w => w with { Message = $"In the load case '{name}' {char.ToLowerInvariant(w.Message[0])}{w.Message[1..]}" }),
        .. PlaceWarnings.Of(inCase.Corner, inCase.Figures, name),
    ];
}
