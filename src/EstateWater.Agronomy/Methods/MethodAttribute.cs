namespace EstateWater.Agronomy.Methods;

/// <summary>Says which published method a class or function carries out, where it is printed, and what it is checked against.</summary>
/// <param name="name">The method's name, as the field knows it.</param>
[AttributeUsage(AttributeTargets.Class | AttributeTargets.Struct | AttributeTargets.Method, AllowMultiple = true, Inherited = false)]
public sealed class MethodAttribute(string name) : Attribute
{
    /// <summary>The method's name, as the field knows it.</summary>
    public string Name { get; } = name;

    /// <summary>Authors, year, title or journal, equation; or "common practice, no published source".</summary>
    public required string Source { get; init; }

    /// <summary>The numbers it is tested against, and whose they are.</summary>
    public required string Check { get; init; }
}
