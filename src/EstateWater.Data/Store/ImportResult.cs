namespace EstateWater.Data.Store;

/// <summary>What an import did, file by file.</summary>
public sealed record ImportResult(IReadOnlyList<ImportedFile> Files)
{
    /// <summary>Whether the database was left as it was.</summary>
    public bool ChangedNothing => Files.All(f => f.New == 0 && f.Changed == 0);
}

/// <summary>Who brought an estate folder in, and when.</summary>
/// <param name="By">A name, or the way it came.</param>
/// <param name="At">The server's clock.</param>
public sealed record ImportStamp(string By, DateTimeOffset At);

/// <summary>What became of the rows of one file.</summary>
/// <param name="File">File name.</param>
/// <param name="New">Rows that were not in the database.</param>
/// <param name="Changed">Rows that replaced others of the same key.</param>
/// <param name="Unchanged">Rows that were there already.</param>
/// <param name="Kept">Rows left as an irrigator confirmed them, though the file says otherwise.</param>
public sealed record ImportedFile(string File, int New, int Changed, int Unchanged, int Kept = 0);
