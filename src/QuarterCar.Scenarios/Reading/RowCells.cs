using CsvHelper;

namespace QuarterCar.Scenarios.Reading;

/// <summary>Whether a row fits its header: a decimal comma makes two cells of one number and moves all that follow by a column.</summary>
internal static class RowCells
{
    /// <summary>True where no cell stands past the last column; else the problem is noted. Empty ones there are left alone, as some programs write them.</summary>
    /// <param name="csv">At the row.</param>
    /// <param name="name">Of the file.</param>
    /// <param name="problems">Takes the mistake, with its line.</param>
    public static bool Fit(CsvReader csv, string name, ProblemList problems)
    {
        var columns = csv.Headers.Count;
        for (var i = columns; i < csv.FieldCount; i++)
        {
            if (csv.GetString(i).Length > 0)
            {
                problems.Note(new Place(name, (int)csv.LineNumber, 0), "", Texts.Cells(csv.FieldCount), Texts.OneCellAColumn(columns));
                return false;
            }
        }

        return true;
    }
}
