using EstateWater.Web.Parts.Field;

namespace EstateWater.Web.Parts;

/// <summary>The words of a map of stress classes.</summary>
/// <param name="language">The reader's language.</param>
public sealed class StressWords(FieldLanguage language) : FieldWords(language)
{
    /// <summary>For pages that have English only.</summary>
    public static StressWords English { get; } = new(FieldLanguage.English);

    public string Map => Say(
        "Map of the blocks. Arrow keys go from block to block, Enter opens one.", "Mapa de los bloques. Las flechas van de bloque en bloque, Entrar abre uno.");

    public string Legend => Say("Stress classes", "Clases de estrés");

    /// <summary>A block with its class, for those who do not see the shade: “B07 River flat, stress severe”.</summary>
    public string Spoken(string name, StressLook look) => look == StressLook.Unknown ? $"{name}, {Of(look)}" : $"{name}, {Say("stress", "estrés")} {Of(look)}";

    /// <summary>A class.</summary>
    public string Of(StressLook look)
    {
        ArgumentNullException.ThrowIfNull(look);
        return Say(look.Words, InSpanish(look.Key));
    }

    private static string InSpanish(string key) => key switch
    {
        "s0" => "ninguno",
        "s1" => "débil",
        "s2" => "de moderado a débil",
        "s3" => "de moderado a fuerte",
        "s4" => "fuerte",
        "su" => "sin lectura reciente",
        _ => throw new ArgumentOutOfRangeException(nameof(key), key, "A class of the list."),
    };
}
