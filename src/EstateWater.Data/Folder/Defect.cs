namespace EstateWater.Data.Folder;

/// <summary>Something wrong in an estate folder, where it is, and what would be right.</summary>
/// <param name="File">File name, relative to the folder.</param>
/// <param name="Line">Line the row or feature begins at, from 1.</param>
/// <param name="Column">The column, or <c>(row)</c>, <c>(header)</c>, <c>(file)</c> where no single column is to blame.</param>
/// <param name="Message">What is wrong.</param>
public sealed record Defect(string File, int Line, string Column, string Message)
{
    internal const string WholeRow = "(row)";
    internal const string WholeHeader = "(header)";
    internal const string WholeFile = "(file)";

    /// <summary><c>FILE:LINE: COLUMN: what is wrong</c></summary>
    public override string ToString() => $"{File}:{Line}: {Column}: {Message}";
}
