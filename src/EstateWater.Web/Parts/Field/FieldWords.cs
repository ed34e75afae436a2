using System.Globalization;
using System.Text.Json;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Web.Parts.Field;

/// <summary>A page's words in the reader's language. Each page has one class of its own, where every text stands in both languages side by side.</summary>
/// <param name="language">The reader's language.</param>
/// <param name="units">The reader's units, days and clock times; null for metric ones, the day before the month and 24 hours.</param>
public abstract class FieldWords(FieldLanguage language, UnitChoice? units = null)
{
    private static readonly string[] SpanishDays = ["dom", "lun", "mar", "mié", "jue", "vie", "sáb"];
    private static readonly string[] SpanishMonths = ["ene", "feb", "mar", "abr", "may", "jun", "jul", "ago", "sep", "oct", "nov", "dic"];

    /// <summary>The reader's language.</summary>
    public FieldLanguage Language { get; } = language;

    /// <summary>How the reader is told quantities, days and clock times.</summary>
    protected UnitChoice Units { get; } = units ?? UnitChoice.Metric;

    /// <summary>Before the name of whoever signed in.</summary>
    public string SignedInAs => Say("Signed in as", "Entró como");

    /// <summary>Above the field for a name.</summary>
    public string YourName => Say("Your name", "Su nombre");

    /// <summary>Until the page's script has looked what waits to be sent.</summary>
    public string LooksForEntries => Say("Looking for what waits on this phone…", "Buscando lo que falta enviar de este teléfono…");

    /// <summary>A measure as people say it in the rows.</summary>
    public string Measure(WaterPotentialMeasure measure) => measure switch
    {
        WaterPotentialMeasure.Leaf => Say("leaf", "hoja"),
        WaterPotentialMeasure.Stem => Say("stem", "tallo"),
        WaterPotentialMeasure.Predawn => Say("predawn", "antes del alba"),
        _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "Leaf, Stem or Predawn."),
    };

    /// <summary>For example “Wed 22 Jan”, “Wed Jan 22”, “mié 22 ene”.</summary>
    public string Day(DateOnly day) => Say(
        Units.Day(day),
        string.Create(CultureInfo.InvariantCulture, $"{SpanishDays[(int)day.DayOfWeek]} {day.Day} {SpanishMonths[day.Month - 1]}"));

    /// <summary>For example “20:00”, “8:00 PM”.</summary>
    public string Clock(DateTimeOffset at) => Units.Clock(at);

    /// <summary>That a unit beside a number is none of the quantity's.</summary>
    /// <param name="unit">As typed.</param>
    /// <param name="kind">What was to be typed.</param>
    public string Strange(string unit, TypedKind kind)
    {
        ArgumentNullException.ThrowIfNull(kind);
        return string.Format(CultureInfo.InvariantCulture, StrangeUnit, unit, kind.Taken);
    }

    /// <summary>The texts that the page's script says, as JSON; {0}, {1} stand for values.</summary>
    public string ScriptJson => JsonSerializer.Serialize(Outbox.Concat(Script).ToDictionary(w => w.Key, w => w.Value));

    /// <summary>The texts of the page's own script, by the name under which it asks for them.</summary>
    protected virtual IReadOnlyDictionary<string, string> Script { get; } = new Dictionary<string, string>();

    /// <summary>The text of the reader's language.</summary>
    protected string Say(string english, string spanish) => Language == FieldLanguage.Spanish ? spanish : english;

    private string StrangeUnit => Say("“{0}” is no unit for this. It takes: {1}", "«{0}» no es una unidad para esto. Se acepta: {1}");

    // What every page with an outbox says of it, and of numbers.
    private Dictionary<string, string> Outbox => new()
    {
        ["nothingWaits"] = Say("Nothing waits to be sent", "Todo está enviado"),
        ["oneWaits"] = Say("1 entry waiting", "1 registro sin enviar"),
        ["manyWait"] = Say("{0} entries waiting", "{0} registros sin enviar"),
        ["oldest"] = Say("oldest from {0}", "el más viejo de las {0}"),
        ["lastSent"] = Say("last sent {0}", "último envío {0}"),
        ["signInToSend"] = Say("Sign in to send", "Entre para enviar"),
        ["signInAsOther"] = Say("Your role may not send these: sign in as someone who may", "Su cuenta no puede enviarlos: entre con otra"),
        ["cannotStore"] = Say(
            "This phone could not store the entry ({0}). Write it down and tell the manager.",
            "Este teléfono no pudo guardar el registro ({0}). Apúntelo en papel y avise al encargado."),
        ["keptAt"] = Say("No signal: this list was kept on this phone at {0}.", "Sin señal: esta lista se guardó en este teléfono a las {0}."),
        ["keptOld"] = Say("The signal is back; this list is from {0}.", "Volvió la señal; esta lista es de las {0}."),
        ["loadAgain"] = Say("Load it again", "Cargarla de nuevo"),
        ["sentAt"] = Say("Sent {0}", "Enviado {0}"),
        ["savedAt"] = Say("Saved on this phone {0}", "Guardado en este teléfono {0}"),
        ["strangeUnit"] = StrangeUnit,
        ["noUnit"] = Say("Only the number, without “{0}”", "Solo el número, sin «{0}»"),
        ["notTaken"] = Say("Not taken: {0}", "No se aceptó: {0}"),
    };
}
