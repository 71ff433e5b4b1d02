using System.CommandLine;

namespace QuarterCar.Cli.Options;

/// <summary>An option that takes one of a few words.</summary>
internal static class Choice
{
    /// <summary>Refuses every other word and says which fit.</summary>
    public static void Of(Option<string?> option, params string[] words)
    {
        option.CompletionSources.Add(words);
        option.Validators.Add(result =>
        {
            foreach (var token in result.Tokens.Where(t => !words.Contains(t.Value)))
                result.AddError($"{option.Name}: found '{token.Value}'; wanted {string.Join(" or ", words)}");
        });
    }
}
