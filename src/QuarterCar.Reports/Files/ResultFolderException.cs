namespace QuarterCar.Reports.Files;

/// <summary>Result files could not be written; what was there before is still there. The message says where and why, for the user.</summary>
public sealed class ResultFolderException : Exception
{
    /// <summary>With the cause.</summary>
    public ResultFolderException(string message, Exception inner)
        : base(message, inner)
    {
    }
}
