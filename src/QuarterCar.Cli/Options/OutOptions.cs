using System.CommandLine;

using QuarterCar.Reports.Files;

namespace QuarterCar.Cli.Options;

/// <summary>Where results go: a folder beside the terminal, and JSON in place of text.</summary>
internal sealed class OutOptions
{
    // For other runs that only ask here too, or are at their last file; whoever stays longer is in the way.
    private static readonly TimeSpan s_patience = TimeSpan.FromSeconds(1);

    private readonly Option<string?> _folder = new("--out") { HelpName = "DIR" };
    private readonly Option<bool> _json = new("--json") { Description = "Prints the result as JSON, and nothing else, on standard output." };

    /// <summary>Adds them to a verb.</summary>
    /// <param name="command">The verb.</param>
    /// <param name="files">What comes into the folder, for the help page.</param>
    public OutOptions(Command command, string files)
    {
        _folder.Description = $"Also writes {files} into DIR, which is made where it is missing.";
        _folder.Validators.Add(result =>
        {
            if (result.Tokens.Any(t => string.IsNullOrWhiteSpace(t.Value))) result.AddError("--out: found an empty name; wanted a folder's");
        });
        command.Add(_folder);
        command.Add(_json);
    }

    /// <summary>True for JSON.</summary>
    public bool Json(ParseResult parsed) => parsed.GetValue(_json);

    /// <summary>The folder, found writable; null for none. Asked before anything is computed.</summary>
    public string? Folder(ParseResult parsed)
    {
        if (parsed.GetValue(_folder) is not { } folder) return null;
        if (File.Exists(folder)) throw new BadInputException($"--out {folder}: found a file; wanted a folder, which is made where it is missing");
        try
        {
            ResultFolder.Open(folder, s_patience).Dispose();
            return folder;
        }
        catch (ResultFolderException e)
        {
            throw new BadInputException(e.Message);
        }
    }
}
