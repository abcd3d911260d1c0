namespace Catalogue.Domain.Components.Lists;

/// <summary>Why the text of a spreadsheet's cell may not be what was typed into it.</summary>
public abstract record CellDoubt
{
    private CellDoubt(int column)
    {
        Column = column;
    }

    /// <summary>The cell's column, from 0.</summary>
    public int Column { get; }

    /// <summary>The cell holds a formula, and the file does not store what came out of it. The cell's text is empty; nothing is evaluated.</summary>
    /// <param name="Column">The cell's column, from 0.</param>
    /// <param name="Formula">The formula without its equals sign; empty where it is shared and stands at another cell.</param>
    public sealed record NoStoredResult(int Column, string Formula) : CellDoubt(Column);

    /// <summary>The cell holds a date, which is also what spreadsheets make of codes such as <c>MAR1</c> and <c>1-3</c>.</summary>
    /// <param name="Column">The cell's column, from 0.</param>
    /// <param name="Date">The date; its time is 00:00 where the cell holds none.</param>
    /// <param name="Format">The number format that shows it, which tells whether day, month or year were typed.</param>
    public sealed record IsDate(int Column, DateTime Date, string Format) : CellDoubt(Column);

    /// <summary>The cell holds a number with an exponent, which is also what spreadsheets make of codes such as <c>1E5</c>.</summary>
    /// <param name="Column">The cell's column, from 0.</param>
    /// <param name="Number">The number.</param>
    public sealed record HasExponent(int Column, double Number) : CellDoubt(Column);

    /// <summary>The cell's format shows fewer digits than the cell holds. The text has them all.</summary>
    /// <param name="Column">The cell's column, from 0.</param>
    /// <param name="Shown">What the spreadsheet shows.</param>
    public sealed record IsRounded(int Column, string Shown) : CellDoubt(Column);

    /// <summary>The cell holds a number so long that a spreadsheet did not keep its last digits.</summary>
    /// <param name="Column">The cell's column, from 0.</param>
    public sealed record LostDigits(int Column) : CellDoubt(Column);
}
