using EstateWater.Agronomy.Phenology;
using EstateWater.Web.Parts.Field;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Web.Features.Taking;

/// <summary>The rules of what is taken in the rows, as whoever sent it is told them.</summary>
/// <param name="language">The sender's language.</param>
/// <param name="units">The sender's units.</param>
public sealed class ReadingRules(FieldLanguage language, UnitChoice units) : EntryRules(language, "2025-01-22T12:30:00+02:00")
{
    public string Kind => Say("An entry is a chamber set, a soil tube, a canopy visit or a growth stage.", "Un registro es una serie de hojas, un tubo de suelo, una visita al follaje o una etapa.");

    public string Withdrawal => Say("A withdrawal names the entry that it withdraws.", "Para quitar algo hay que decir qué registro.");

    public string Block => Say("An entry names its block.", "Al registro le falta el bloque.");

    public string TakenAt => Say($"An entry says when it was taken, like {Instant}.", $"Al registro le falta cuándo se tomó, como {Instant}.");

    public string TakenBy(int longest) => Say($"Say who took it, in at most {longest} letters.", $"Diga quién lo tomó, con {longest} letras a lo más.");

    public string Stage => Say($"A growth stage is a number from {GrowthStages.First} to {GrowthStages.Last}, like 27.", $"Una etapa es un número de {GrowthStages.First} a {GrowthStages.Last}, como 27.");

    public string WhichMeasure => Say("The measure is leaf, stem or predawn.", "La medida es hoja, tallo o antes del alba.");

    public string Leaves(int most) => Say($"A set has 1 to {most} leaves.", $"Una serie tiene de 1 a {most} hojas.");

    public string Tension => Say(
        $"A leaf’s pressure is above 0 and at most {ReadingLimits.Tension(units)}.", $"La presión de una hoja es más de 0 y no más de {ReadingLimits.Tension(units, "como")}.");

    public string LeafTakenAt => Say($"A leaf says when it was read, like {Instant}.", $"A una hoja le falta cuándo se leyó, como {Instant}.");

    public string Group(int longest) => Say($"A group has at most {longest} letters.", $"Un grupo tiene {longest} letras a lo más.");

    public string Exposure => Say("A leaf hung in sun or shade.", "Una hoja estaba al sol o a la sombra.");

    public string Bagged(int most) => Say($"Minutes in the bag are 0 to {most}.", $"Los minutos en la bolsa van de 0 a {most}.");

    public string Delay(int most) => Say($"Seconds from cut to chamber are 0 to {most}.", $"Los segundos del corte a la cámara van de 0 a {most}.");

    public string Tube => Say("Name the tube, like T1.", "Ponga el tubo, como T1.");

    public string Depths(int most) => Say($"A tube has 1 to {most} depths.", $"Un tubo tiene de 1 a {most} profundidades.");

    public string DepthOnce => Say("Each depth is entered once.", "Cada profundidad va una sola vez.");

    public string Depth => Say($"A depth is above 0 and at most {ReadingLimits.Depth(units)}.", $"Una profundidad es más de 0 y no más de {ReadingLimits.Depth(units, "como")}.");

    public string Content => Say("Water content is 0 to 100 %, like 24.", "La humedad va de 0 a 100 %, como 24.");

    public string Count => Say("A count is 0 or more.", "Un conteo es 0 o más.");

    public string Standard => Say("Counts need the standard count of the session, like 12000.", "Con conteos hace falta el conteo patrón, como 12000.");

    public string ContentOrCount => Say("A depth has either a water content or a count.", "Una profundidad lleva humedad o conteo, uno de los dos.");

    public string Shoot => Say($"Shoot length is 0 to {ReadingLimits.Shoot(units)}.", $"El brote mide de 0 a {ReadingLimits.Shoot(units, "como")}.");

    public string Shade => Say("Shade is 0 to 100 % of the ground, like 35.", "La sombra va de 0 a 100 % del suelo, como 35.");

    public string Tips => Say("Growing tips are 0 to 100 %, like 40.", "Las puntas que crecen van de 0 a 100 %, como 40.");

    public string Stress => Say("Stress seen is 0, 1, 2 or 3.", "El estrés que se ve es 0, 1, 2 o 3.");

    public string Canopy => Say("Enter at least one thing that you saw.", "Anote al menos una cosa que vio.");
}
