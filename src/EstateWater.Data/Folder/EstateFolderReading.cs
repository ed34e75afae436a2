using EstateWater.Data.Model;

namespace EstateWater.Data.Folder;

/// <summary>What came of reading an estate folder: the estate, or every defect of every file.</summary>
/// <param name="Contents">The estate; <see langword="null"/> when there is any defect.</param>
/// <param name="Defects">In the order of files and lines; empty when all is well.</param>
public sealed record EstateFolderReading(EstateContents? Contents, IReadOnlyList<Defect> Defects);
