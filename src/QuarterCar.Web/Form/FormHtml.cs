using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;

using QuarterCar.Reports.Html;
using QuarterCar.Scenarios.Keys;

namespace QuarterCar.Web.Form;

/// <summary>Writes the form. The browser takes it anew only when its key changes: when a part comes or goes.</summary>
internal static class FormHtml
{
    private static readonly ImmutableHashSet<string> s_open = ["load", "springs", "ground"];

    /// <summary>Changes when other fields or buttons are there; values alone leave it as it is.</summary>
    public static string Key(ImmutableArray<FieldGroup> groups)
    {
        var text = new StringBuilder();
        foreach (FieldBlock block in groups.SelectMany(g => g.Blocks))
        {
            text.Append(block.Title).Append('|');
            foreach (Field field in block.Fields) text.Append(field.Path).Append(field.Aside).Append('|');
            foreach (PartButton button in block.Buttons) text.Append(button.Path).Append(button.Text).Append('|');
        }

        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())))[..16];
    }

    /// <summary>The groups.</summary>
    public static string Write(ImmutableArray<FieldGroup> groups)
    {
        var html = new HtmlText();
        foreach (FieldGroup group in groups)
        {
            html.Raw($"<details class=\"group\" id=\"group-{group.Id}\"{(s_open.Contains(group.Id) ? " open" : "")}><summary><h3>{HtmlText.Encode(group.Title)}</h3></summary>");
            foreach (FieldBlock block in group.Blocks) Block(html, block);
            ImmutableArray<Field> aside = [.. group.Fields.Where(f => f.Aside)];
            if (aside.Length > 0)
            {
                html.Raw("<details class=\"more\"><summary>More</summary>");
                foreach (Field field in aside) Row(html, field, group.Blocks.First(b => b.Fields.Contains(field)).Title);
                html.Raw("</details>");
            }

            html.Raw("</details>");
        }

        return html.ToString();
    }

    private static void Block(HtmlText html, FieldBlock block)
    {
        ImmutableArray<Field> fields = [.. block.Fields.Where(f => !f.Aside)];
        if (fields.IsEmpty && block.Buttons.IsEmpty) return;
        html.Raw("<div class=\"block\">");
        if (block.Title.Length > 0 || block.Buttons.Length > 0)
        {
            html.Raw($"<div class=\"head\"><h4>{HtmlText.Encode(block.Title)}</h4><span class=\"parts\">");
            foreach (PartButton button in block.Buttons)
                html.Raw($"<button type=\"button\" class=\"part\" data-path=\"{HtmlText.Encode(button.Path)}\" data-text=\"{HtmlText.Encode(button.Text)}\" aria-label=\"{HtmlText.Encode(button.Label + ": " + block.Title)}\">{HtmlText.Encode(button.Label)}</button>");
            html.Raw("</span></div>");
        }

        foreach (Field field in fields) Row(html, field, block.Title);
        html.Raw("</div>");
    }

    private static void Row(HtmlText html, Field field, string part)
    {
        string path = HtmlText.Encode(field.Path), id = Id(field.Path);
        bool wide = field.Kind is TableKind && field.Shown.StartsWith('[');
        html.Raw($"<div class=\"field{(wide ? " wide-field" : "")}\" data-path=\"{path}\"><label for=\"{id}\" data-drag=\"{path}\">{HtmlText.Encode(field.Label)}{(part.Length > 0 ? $"<span class=\"unseen\">, {HtmlText.Encode(part)}</span>" : "")}</label>");
        html.Raw(Input(field, id, path));
        if (field.Kind is QuantityKind || (field.Kind is TableKind { OrPlainValue: true } && !wide))
            html.Raw($"<button type=\"button\" class=\"matter\" data-path=\"{path}\" aria-label=\"How much does {HtmlText.Encode(field.Label)} matter?\" title=\"How much does this matter?\"><span aria-hidden=\"true\">\u223f</span></button>");
        html.Raw($"<p class=\"hint\" id=\"{id}-hint\">{HtmlText.Encode(field.Help)}</p><p class=\"problem\" id=\"{id}-problem\" hidden></p></div>");
    }

    private static string Input(Field field, string id, string path)
    {
        string described = $"aria-describedby=\"{id}-hint {id}-problem\"";
        if (field.Kind is not ChoiceKind choice)
            return $"<input id=\"{id}\" type=\"text\" autocomplete=\"off\" spellcheck=\"false\" data-path=\"{path}\" value=\"{HtmlText.Encode(field.Shown)}\" placeholder=\"{HtmlText.Encode(field.Ghost)}\" {described}>";
        string chosen = field.Shown.Length > 0 ? field.Shown : field.Ghost;
        string options = string.Concat(choice.Words.Select(w => $"<option value=\"{HtmlText.Encode(w)}\"{(w == chosen ? " selected" : "")}>{HtmlText.Encode(FieldWords.Choice(w))}</option>"));
        return $"<select id=\"{id}\" data-path=\"{path}\" {described}>{options}</select>";
    }

    /// <summary>An element's id for a path.</summary>
    public static string Id(string path) => "f-" + string.Concat(path.Select(c => char.IsAsciiLetterOrDigit(c) ? c.ToString() : "-" + ((int)c).ToString("x", CultureInfo.InvariantCulture)));
}
