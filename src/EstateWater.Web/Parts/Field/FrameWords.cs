using System.Globalization;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Web.Parts.Field;

/// <summary>The words around every page used outdoors.</summary>
/// <param name="language">The reader's language.</param>
/// <param name="units">How the reader writes days and clock times.</param>
public sealed class FrameWords(FieldLanguage language, UnitChoice units) : FieldWords(language, units)
{
    public string Skip => Say("Skip to the content", "Ir al contenido");

    public string Preferences => Say("Preferences", "Preferencias");

    public string DemoClockName => Say("Clock", "Reloj");

    /// <summary>Says that the demo's clock stands still, and where.</summary>
    public string DemoClock(DateTimeOffset at) => Say(
        $"Demo clock: fixed at {Units.Moment(at)}",
        string.Create(CultureInfo.InvariantCulture, $"Reloj de la demostración: parado el {Day(DateOnly.FromDateTime(at.DateTime))} {at.Year} a las {at:HH:mm}"));
}
