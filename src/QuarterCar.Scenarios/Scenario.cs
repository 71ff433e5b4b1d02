using System.Collections.Immutable;

using QuarterCar.Model;
using QuarterCar.Model.Terrain;

namespace QuarterCar.Scenarios;

/// <summary>One scenario as read: immutable, SI, every override and load case applied. What it says is in <see cref="Corner"/> and <see cref="Excitation"/>; how it is run, judged and varied stands beside.</summary>
/// <param name="Title">The title.</param>
/// <param name="File">The file's name as given, for messages and reports.</param>
/// <param name="Hash">Lower-case SHA-256 (hex) of the content after overrides: equal for equal content, whatever the file's name; empty for a study's setup that nobody asks for it.</param>
/// <param name="Units">Output units.</param>
/// <param name="Corner">The corner's words.</param>
/// <param name="Excitation">A course driven at a speed, or a drop.</param>
/// <param name="Run">How long, how finely sampled, how exactly.</param>
/// <param name="Limits">Largest allowed figures, in file order.</param>
/// <param name="Cases">Load cases, in file order.</param>
/// <param name="Tolerances">For the spread study, in file order.</param>
/// <param name="Warnings">Remarks of the reader, not errors.</param>
public sealed record Scenario(
    string Title,
    string File,
    string Hash,
    UnitSystem Units,
    CornerData Corner,
    Excitation Excitation,
    RunSettings Run,
    ImmutableArray<Limit> Limits,
    ImmutableArray<LoadCase> Cases,
    ImmutableArray<Tolerance> Tolerances,
    ImmutableArray<Warning> Warnings);

/// <summary>Units of what comes out.</summary>
public enum UnitSystem
{
    /// <summary>m, N, m/s.</summary>
    Si,

    /// <summary>in, lbf, in/s.</summary>
    Us,
}

/// <summary>What moves the wheel.</summary>
public abstract record Excitation;

/// <summary>Ground driven over at constant speed.</summary>
/// <param name="Pieces">The ground, from the wheel forward.</param>
/// <param name="Speed">m/s, above 0.</param>
public sealed record Course(ImmutableArray<TerrainPiece> Pieces, double Speed) : Excitation;

/// <summary>A drop from full droop onto level ground.</summary>
/// <param name="Height">Of the unloaded tyre above the ground, m.</param>
public sealed record Drop(double Height) : Excitation;

/// <summary>How a run is carried out.</summary>
/// <param name="Duration">s; null for the default: until 3 s after the terrain's end, or 6 s for a drop.</param>
/// <param name="Sample">s between rows of the trace.</param>
/// <param name="Tolerance">Relative accuracy asked of the integration.</param>
public sealed record RunSettings(double? Duration = null, double Sample = 1e-3, double Tolerance = 1e-6);

/// <summary>A limit on a figure of the summary.</summary>
/// <param name="Figure">Full dotted name (counts.bottom_out), resolved by the reader.</param>
/// <param name="Largest">Largest allowed value, in the unit of the figure's name.</param>
public sealed record Limit(string Figure, double Largest);

/// <summary>A load case: new values by dotted path, as written.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Changes">Path and value as written in the file.</param>
public sealed record LoadCase(string Name, ImmutableArray<KeyValuePair<string, string>> Changes);

/// <summary>How uncertain a value is, for the spread study.</summary>
/// <param name="Path">Dotted path into the scenario.</param>
/// <param name="Value">What the scenario has there, or its default, SI.</param>
/// <param name="Within">Half-width, SI, or a share of the value where <paramref name="Relative"/>.</param>
/// <param name="Relative">True where given in percent of the value.</param>
/// <param name="Uniform">True for bounds of a uniform distribution; false for the 95 % half-width of a normal one.</param>
public sealed record Tolerance(string Path, double Value, double Within, bool Relative, bool Uniform);

/// <summary>A remark with a stable code and one plain sentence that says what to do.</summary>
/// <param name="Code">As listed in the documentation, snake_case.</param>
/// <param name="Message">One sentence.</param>
public sealed record Warning(string Code, string Message);
