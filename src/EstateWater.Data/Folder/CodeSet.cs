namespace EstateWater.Data.Folder;

/// <summary>The codes one file defines and others refer to.</summary>
internal sealed class CodeSet(string what, string file)
{
    private readonly HashSet<string> codes = new(StringComparer.Ordinal);

    /// <summary>False when a code could not be read or is there twice: then a reference to one we do not know may be right.</summary>
    public bool IsComplete { get; set; } = true;

    /// <summary>Adds a code; says why it is refused, or <see langword="null"/> when it is fine.</summary>
    public string? Add(string? code)
    {
        var isNew = !string.IsNullOrEmpty(code) && codes.Add(code);
        IsComplete &= isNew;
        return isNew || string.IsNullOrEmpty(code) ? null : $"'{code}' is there already; each {what} appears once";
    }

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
