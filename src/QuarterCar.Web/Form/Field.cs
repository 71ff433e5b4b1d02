using System.Collections.Immutable;

using QuarterCar.Scenarios.Keys;

namespace QuarterCar.Web.Form;

/// <summary>One input of the page.</summary>
/// <param name="Path">Dotted path into the scenario.</param>
/// <param name="Label">Words of the trade.</param>
/// <param name="Help">One line.</param>
/// <param name="Kind">What may stand there.</param>
/// <param name="Shown">As shown, in the page's units; empty where the scenario has nothing there.</param>
/// <param name="Ghost">What holds where it is left empty.</param>
/// <param name="Aside">True where it stands under "more".</param>
internal sealed record Field(string Path, string Label, string Help, KeyKind Kind, string Shown, string Ghost, bool Aside);

/// <summary>A part that may be there or not: a tender, a stop nut, a piece of ground.</summary>
/// <param name="Label">On the button.</param>
/// <param name="Path">What the button sets.</param>
/// <param name="Text">To what; "none" takes it away.</param>
internal sealed record PartButton(string Label, string Path, string Text);

/// <summary>Fields that belong to one part.</summary>
/// <param name="Title">Empty for the group's own.</param>
/// <param name="Fields">In order.</param>
/// <param name="Buttons">Put the part in or take it out.</param>
internal sealed record FieldBlock(string Title, ImmutableArray<Field> Fields, ImmutableArray<PartButton> Buttons);

/// <summary>A group of the form, as the corner is built.</summary>
/// <param name="Id">For links and tests.</param>
/// <param name="Title">Heading.</param>
/// <param name="Blocks">In order.</param>
internal sealed record FieldGroup(string Id, string Title, ImmutableArray<FieldBlock> Blocks)
{
    /// <summary>Every field.</summary>
    public IEnumerable<Field> Fields => Blocks.SelectMany(b => b.Fields);
}
