using EstateWater.Web.Parts.Field;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Web.Features.Sets;

/// <summary>The rules of what irrigators say of a set and of its photo, as whoever sent it is told them.</summary>
/// <param name="language">The sender's language.</param>
/// <param name="units">The sender's units.</param>
public sealed class ConfirmationRules(FieldLanguage language, UnitChoice units) : EntryRules(language, "2025-01-22T06:30:00+02:00")
{
    public string Set => Say("An entry names its set.", "Al registro le falta el riego.");

    public string Hours(double most) => Say($"Hours must be between 0 and {units.Trimmed(most)}, like {units.Trimmed(6.5)}.", $"Las horas van de 0 a {units.Trimmed(most)}, como {units.Trimmed(6.5)}.");

    public string Meter => Say(
        $"The meter must show 0 {units.Volume.Symbol} or more, like {units.Trimmed(171.5)}.", $"El medidor marca 0 {units.Volume.Symbol} o más, como {units.Trimmed(171.5)}.");

    public string MeterBackwards => Say("The meter after must not show less than before.", "El medidor después no puede marcar menos que antes.");

    public string NotRun => Say("A set that did run has no such reason; one that did not has one of the list.", "Un riego que se hizo no lleva razón; uno que no se pudo lleva una de la lista.");

    public string Who(int longest) => Say($"Say who confirms, in at most {longest} letters.", $"Diga quién confirma, con {longest} letras a lo más.");

    public string Why => Say("Say why it could not be run.", "Diga por qué no se pudo regar.");

    public string PhotoBytes(int mostMegabytes) => Say($"A photo has at most {mostMegabytes} MB.", $"Una foto tiene {mostMegabytes} MB a lo más.");

    public string PhotoOfNothing => Say("The entry of this photo is not here.", "El registro de esta foto no está aquí.");

    public string PhotoTwice => Say("This entry has another photo already.", "Este registro ya tiene otra foto.");

    public string Photo(JpegMistake mistake) => mistake switch
    {
        JpegMistake.NotWhole => Say("The photo is no whole JPEG picture.", "La foto no es un JPEG completo."),
        JpegMistake.NoFrame => Say("The photo has no JPEG frame.", "A la foto le falta el cuadro JPEG."),
        JpegMistake.TooLarge => Say($"A photo has at most {JpegCheck.LongestSide} px on a side.", $"Una foto tiene {JpegCheck.LongestSide} px por lado a lo más."),
        _ => throw new ArgumentOutOfRangeException(nameof(mistake), mistake, "A mistake of the list."),
    };
}
