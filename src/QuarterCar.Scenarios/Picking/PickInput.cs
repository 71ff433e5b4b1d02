using System.Collections.Immutable;

using QuarterCar.Model.Selection;
using QuarterCar.Scenarios.SpringLists;

namespace QuarterCar.Scenarios.Picking;

/// <summary>What `pick` is asked, as read.</summary>
/// <param name="Data">SI.</param>
/// <param name="Springs">The list.</param>
/// <param name="Tenders">Null for pairs alone.</param>
/// <param name="Invented">True where the list that ships is in use.</param>
/// <param name="Units">Output units.</param>
public sealed record PickInput(PickData Data, SpringList Springs, SpringList? Tenders, bool Invented, UnitSystem Units);

/// <summary>What came of a reading.</summary>
/// <param name="Input">Null where there are problems.</param>
/// <param name="Problems">Every mistake; empty where all is well.</param>
public sealed record PickReading(PickInput? Input, ImmutableArray<Problem> Problems);
