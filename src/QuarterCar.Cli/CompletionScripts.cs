using System.Collections.Immutable;

namespace QuarterCar.Cli;

/// <summary>Completion scripts: each hands the line typed so far to the program and offers its words; where there are none, files.</summary>
internal static class CompletionScripts
{
    private const string Bash =
        """
        # quartercar completion bash: put   source <(quartercar completion bash)   into ~/.bashrc
        _quartercar() {
          local line=${COMP_LINE:0:COMP_POINT} word=${COMP_WORDS[COMP_CWORD]}
          local IFS=$'\n'
          COMPREPLY=($(compgen -W "$(quartercar completion bash --line "${line#* }" 2>/dev/null)" -- "$word"))
          [[ ${COMPREPLY[0]} == *= ]] && compopt -o nospace
        }
        complete -o default -o nosort -F _quartercar quartercar

        """;

    private const string Zsh =
        """
        # quartercar completion zsh: put   source <(quartercar completion zsh)   into ~/.zshrc, after compinit
        _quartercar() {
          local -a words_of_it
          words_of_it=("${(@f)$(quartercar completion zsh --line "${${LBUFFER}#* }" 2>/dev/null)}")
          if [[ -n ${words_of_it[1]} ]]; then compadd -Q -- $words_of_it; else _files; fi
        }
        compdef _quartercar quartercar

        """;

    private const string Fish =
        """
        # quartercar completion fish: quartercar completion fish > ~/.config/fish/completions/quartercar.fish
        complete -c quartercar -a '(quartercar completion fish --line (string replace -r "^\\S+ " "" -- (commandline -cp)) 2>/dev/null)'

        """;

    private const string PowerShell =
        """
        # quartercar completion pwsh: put   quartercar completion pwsh | Out-String | Invoke-Expression   into $PROFILE
        Register-ArgumentCompleter -Native -CommandName quartercar -ScriptBlock {
          param($word, $ast, $position)
          $line = ($ast.ToString().PadRight($position)).Substring(0, $position) -replace '^\S+ ', ''
          quartercar completion pwsh --line "$line" 2>$null | ForEach-Object { [System.Management.Automation.CompletionResult]::new($_) }
        }

        """;

    /// <summary>Shells that there is a script for.</summary>
    public static readonly ImmutableArray<string> Shells = ["bash", "zsh", "fish", "pwsh"];

    /// <summary>The script of a shell; null where there is none.</summary>
    public static string? Of(string shell) => shell switch
    {
        "bash" => Bash,
        "zsh" => Zsh,
        "fish" => Fish,
        "pwsh" => PowerShell,
        _ => null,
    };
}
