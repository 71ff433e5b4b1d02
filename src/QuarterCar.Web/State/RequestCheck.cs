namespace QuarterCar.Web.State;

/// <summary>What a request must have whatever it asks: a text, and lists that are not beyond all bounds.</summary>
internal static class Requests
{
    private const int MostChanges = 500, MostSetups = 5, LongestValue = 100_000;

    /// <summary>What is wrong with it; null for nothing.</summary>
    public static string? Objection(object request) => request switch
    {
        CornerRequest c => Of(c.Setup) ?? Of(c.Edits) ?? Of(c.Base) ?? (c.Steps is { } steps && (steps.Length > MostChanges || steps.Any(s => s?.Path is null)) ? "The steps are not in order." : null),
        MatterRequest m => Of(m.Setup) ?? Of(m.Base) ?? (m.Path is null || m.Figure is null ? "The request names no input or no figure." : null),
        FileRequest f => Of(f.Setup) ?? (f.Kind is null ? "The request names no file." : null),
        CompareRequest c => c.Setups is null or { Length: 0 } or { Length: > MostSetups } ? "The request needs one to five setups." : c.Setups.Select(Of).FirstOrDefault(o => o is not null),
        _ => null,
    };

    private static string? Of(SetupState? setup) => setup is null || setup.Text is null || setup.Changes is null ? "The request has no scenario." : Of(setup.Changes);

    private static string? Of(Change[]? changes) =>
        changes is { } list && (list.Length > MostChanges || list.Any(c => c?.Path is null || c.Text is null || c.Text.Length > LongestValue || c.Path.Contains('=', StringComparison.Ordinal))) ? "The changes are not in order." : null;
}
