namespace EstateWater.Data.Folder;

/// <summary>The words that files use for a choice: the names of <typeparamref name="T"/> in lower case.</summary>
internal static class Words<T>
    where T : struct, Enum
{
    private static readonly string[] All = [.. Enum.GetNames<T>().Select(name => name.ToLowerInvariant())];
    private static readonly T[] Values = Enum.GetValues<T>();

    public static string List { get; } = string.Join(", ", All);

    public static string Of(T value) => All[Array.IndexOf(Values, value)];

    public static T? Find(string word)
    {
        var index = Array.IndexOf(All, word);
        return index < 0 ? null : Values[index];
    }
}
