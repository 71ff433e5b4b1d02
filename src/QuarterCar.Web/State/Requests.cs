using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace QuarterCar.Web.State;

/// <summary>One value that the page changes in the scenario.</summary>
/// <param name="Path">Dotted path.</param>
/// <param name="Text">The value as a scenario file has it; "none" takes the key away.</param>
internal sealed record Change(string Path, string Text);

/// <summary>Presses of an arrow key on a field, counted.</summary>
/// <param name="Path">Dotted path.</param>
/// <param name="Count">Up positive.</param>
internal sealed record Step(string Path, int Count);

/// <summary>A setup as the browser holds it: the scenario's text and what was changed since.</summary>
/// <param name="Text">The scenario file.</param>
/// <param name="Changes">In order; a path stands once.</param>
/// <param name="Case">Load case; null or empty for the scenario as written.</param>
internal sealed record SetupState(string Text, Change[] Changes, string? Case)
{
    /// <summary>The load case; null for the scenario as written.</summary>
    [JsonIgnore]
    public string? LoadCase => string.IsNullOrEmpty(Case) ? null : Case;

    /// <summary>The scenario that the fields show and that is saved: without the load case, which is a change on top of it.</summary>
    [JsonIgnore]
    public SetupState Own => this with { Case = null };

    /// <summary>The changes as overrides, PATH=VALUE.</summary>
    [JsonIgnore]
    public ImmutableArray<string> Sets => [.. Changes.Select(c => c.Path + "=" + c.Text)];
}

/// <summary>What the page asks at every turn of something.</summary>
/// <param name="Setup">The setup before this turn.</param>
/// <param name="Edits">Values typed since, applied in order.</param>
/// <param name="Steps">Arrow keys pressed since, applied after the edits.</param>
/// <param name="Hold">none, nut, ride_height or crossover.</param>
/// <param name="Base">The changes at the moment the hold was switched on.</param>
/// <param name="Units">us or si; null for the scenario's own.</param>
/// <param name="Form">Key of the form that the browser shows; null for none.</param>
internal sealed record CornerRequest(SetupState Setup, Change[]? Edits, Step[]? Steps, string? Hold, Change[]? Base, string? Units, string? Form);

/// <summary>A small sweep of one input.</summary>
/// <param name="Setup">The setup.</param>
/// <param name="Path">The input.</param>
/// <param name="Figure">Dotted name of a figure.</param>
/// <param name="Units">us or si; null for the scenario's own.</param>
/// <param name="Hold">none, nut, ride_height or crossover.</param>
/// <param name="Base">The changes at the moment the hold was switched on.</param>
internal sealed record MatterRequest(SetupState Setup, string Path, string Figure, string? Units, string? Hold = null, Change[]? Base = null);

/// <summary>Setups beside each other.</summary>
/// <param name="Setups">The current one first.</param>
/// <param name="Units">us or si; null for the scenario's own.</param>
internal sealed record CompareRequest(SetupState[] Setups, string? Units);

/// <summary>A file that is wanted of a setup.</summary>
/// <param name="Setup">The setup.</param>
/// <param name="Kind">scenario, sheet, trace or events.</param>
/// <param name="Units">us or si; null for the scenario's own.</param>
internal sealed record FileRequest(SetupState Setup, string Kind, string? Units);

/// <summary>Reads requests without reflection: the same in a program that was compiled ahead.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, RespectNullableAnnotations = true, RespectRequiredConstructorParameters = false)]
[JsonSerializable(typeof(CornerRequest))]
[JsonSerializable(typeof(MatterRequest))]
[JsonSerializable(typeof(CompareRequest))]
[JsonSerializable(typeof(FileRequest))]
internal sealed partial class RequestJson : JsonSerializerContext;
