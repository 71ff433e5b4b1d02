using System.Collections.Immutable;

using QuarterCar.Model;

namespace QuarterCar.Scenarios.Reading;

/// <summary>What happens to the stop nut when something else changes.</summary>
public enum NutRule
{
    /// <summary>It stays where the scenario as written puts it on the body.</summary>
    Stays,

    /// <summary>Its gap is set anew as the scenario says.</summary>
    Reset,
}

/// <summary>How the scenario as written stands: asked where a change must keep something of it. Null where it has no answer.</summary>
public interface IStandingBase
{
    /// <summary>C*: the upper group's compression at which the slider meets the stop nut, m (physics.md section 3).</summary>
    double? HeldTravel(CornerData asWritten);

    /// <summary>The sprung weight that a spring load means, N (physics.md section 1).</summary>
    double? SprungWeight(CornerData asWritten);
}

/// <summary>Knows no answer: for readings that keep nothing.</summary>
public sealed class NoStandingBase : IStandingBase
{
    /// <inheritdoc/>
    public double? HeldTravel(CornerData asWritten) => null;

    /// <inheritdoc/>
    public double? SprungWeight(CornerData asWritten) => null;
}

/// <summary>What is asked of a reading beside the file.</summary>
/// <param name="Case">Load case to take; null for none.</param>
/// <param name="Sets">Overrides, each PATH=VALUE, applied after the case in this order.</param>
/// <param name="Nut">Null for the default: reset for overrides, stays for a case. With both, the overrides' gap is set anew and then stays for the case.</param>
/// <param name="Units">Output units; null for those of the scenario's first length, force or rate.</param>
/// <param name="Base">How the scenario as written stands.</param>
public sealed record ReadOptions(string? Case, ImmutableArray<string> Sets, NutRule? Nut, UnitSystem? Units, IStandingBase Base)
{
    /// <summary>True where the overrides are edits of the scenario itself and the case is a change on top of them; else the overrides have the last word.</summary>
    public bool CaseComesLast { get; init; }

    /// <summary>The file alone.</summary>
    public static readonly ReadOptions Plain = new(null, [], null, null, new NoStandingBase());
}

/// <summary>What a reading gave.</summary>
/// <param name="Scenario">Null where there are problems.</param>
/// <param name="Problems">Every mistake; empty where there is a scenario.</param>
/// <param name="Nut">What happened to the stop nut; null where there is none or where nothing at the corner changed.</param>
public sealed record ReadResult(Scenario? Scenario, ImmutableArray<Problem> Problems, NutRule? Nut);
