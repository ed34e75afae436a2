using EstateWater.Web.Parts.Field;
using EstateWater.Web.Parts.Preferences;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Web.Features.Preferences;

/// <summary>The words of the page of preferences.</summary>
/// <param name="language">The reader's language.</param>
public sealed class PreferencesWords(FieldLanguage language) : FieldWords(language)
{
    public string Title => Say("Preferences", "Preferencias");

    public string Lead => Say(
        "How pages speak to you, wherever you sign in. The estate’s own data stay as they are: nothing is converted but what you see and type.",
        "Cómo le hablan las páginas, dondequiera que entre. Los datos de la finca quedan como están: solo se convierte lo que usted ve y escribe.");

    public string Kept => Say("Kept.", "Guardado.");

    public string UnitsTitle => Say("Units", "Unidades");

    public string AllMetric => Say("All metric", "Todo métrico");

    public string AllUs => Say("All US", "Todo de EE. UU.");

    public string Question(UnitQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        return question.Name switch
        {
            "pressure" => Say(question.Words, "Tensión"),
            "depth" => Say(question.Words, "Agua y lluvia como lámina"),
            "volume" => Say(question.Words, "Agua como volumen, y caudal"),
            "area" => Say(question.Words, "Superficie"),
            "temperature" => Say(question.Words, "Temperatura"),
            _ => throw new ArgumentOutOfRangeException(nameof(question), question.Name, "A question of the list."),
        };
    }

    public string Numbers => Say("Numbers, days and times", "Números, días y horas");

    public string AsTheLanguage => Say("As the page’s language writes them", "Como se escriben en el idioma de la página");

    public string Example(UnitChoice units)
    {
        ArgumentNullException.ThrowIfNull(units);
        var shown = $"{units.Tension(13.24)}, {units.DepthOf(9.84)}, {units.VolumeOf(12_310)}, {units.Flow(28.4)}, {units.AreaOf(21_400)}, {units.TemperatureOf(39)}";
        return Say($"For example: {shown}. You may type a comma or a point.", $"Por ejemplo: {shown}. Puede escribir con coma o con punto.");
    }

    public string LookTitle => Say("Appearance", "Apariencia");

    public string Look(Appearance look) => look switch
    {
        Appearance.Light => Say("Light", "Clara"),
        Appearance.Dark => Say("Dark", "Oscura"),
        _ => Say("As this device is set", "Como esté este aparato"),
    };

    public string LookLead => Say(
        "Pages for the rows stay black on white for the sun unless you choose dark here. Paper is always light.",
        "Las páginas para el campo quedan en negro sobre blanco, por el sol, salvo que aquí elija oscura. El papel siempre es claro.");

    public string LanguageTitle => Say("Language of pages for the rows", "Idioma de las páginas para el campo");

    public string Keep => Say("Keep these", "Guardar");
}
