using QuarterCar.Reports.Files;

namespace QuarterCar;

/// <summary>Result folders as the library tells of them.</summary>
internal static class Folder
{
    /// <summary>Writes, and turns what went wrong with the folder into the exception that a caller expects.</summary>
    public static void Write(Action write)
    {
        try
        {
            write();
        }
        catch (ResultFolderException e)
        {
            throw new IOException(e.Message, e);
        }
    }
}
