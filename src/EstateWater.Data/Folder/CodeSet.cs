namespace EstateWater.Data.Folder;

/// <summary>The codes one file defines and others refer to.</summary>
internal sealed class CodeSet(string what, string file)
{
    private readonly HashSet<string> codes = new(StringComparer.Ordinal);

    /// <summary>False when the defining file could not be read: then a reference cannot be judged.</summary>
    public bool IsComplete { get; set; } = true;

    /// <summary>Adds a code; false when it is there already.</summary>
    public bool Add(string code) => codes.Add(code);

    /// <summary>Says why a reference is refused; <see langword="null"/> when it is fine.</summary>
    public string? ProblemWith(string code)
    {
        if (!IsComplete || codes.Contains(code))
        {
            return null;
        }

        var near = codes.FirstOrDefault(c => string.Equals(c, code, StringComparison.OrdinalIgnoreCase));
        return $"unknown {what} '{code}'; {(near is null ? $"use a {what} of {file}" : $"did you mean '{near}'?")}";
    }
}
