namespace QuarterCar.Reports.Files;

/// <summary>Result files could not be written; what was there before is still there. The message says where and why, for the user.</summary>
public sealed class ResultFolderException : Exception
{
    /// <summary>Without a cause outside the program.</summary>
    public ResultFolderException(string message)
        : base(message)
    {
    }

    /// <summary>With the cause.</summary>
    public ResultFolderException(string message, Exception inner)
        : base(message, inner)
    {
    }
}
