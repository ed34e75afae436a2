using EstateWater.Planning.Rounds;
using EstateWater.Web.Parts;
using EstateWater.Web.Parts.Field;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Web.Features.Rounds;

/// <summary>The words of the page of the round.</summary>
/// <param name="language">The reader's language.</param>
/// <param name="units">The reader's units.</param>
public sealed class RoundWords(FieldLanguage language, UnitChoice units) : FieldWords(language, units)
{
    public string Title => Say("The round of readings", "La ronda de lecturas");

    public string NoPlan => Say("There is no plan yet", "Todavía no hay plan");

    public string NoPlanText => Say("A round is planned from the outlook, which needs more than there is:", "La ronda sale del pronóstico de los bloques, y para ese falta algo:");

    /// <summary>What is read, on which day and when.</summary>
    public string Headline(RoundPlan round, int blocks, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(round);
        var day = Say(Units.NearDay(round.Date, today), NearDay(round.Date, today));
        if (round.Stops.Count == 0)
        {
            return Say($"Nothing to read {day}.", $"Nada que leer {day}.");
        }

        var (leaves, from, to) = (round.Stops.Sum(s => s.Leaves), Units.Clock(round.Stops[0].From), Units.Clock(round.Stops[^1].To));
        return Say(
            $"Read {EstateText.Count(round.Stops.Count)} of {EstateText.Count(blocks)} blocks {day}, {leaves} leaves, from {from} to {to}.",
            $"Leer {round.Stops.Count} de {blocks} bloques {day}, {leaves} hojas, de {from} a {to}.");
    }

    public string Window(RoundPlan round)
    {
        ArgumentNullException.ThrowIfNull(round);
        var (from, to, noon) = (Units.Clock(round.WindowFrom), Units.Clock(round.WindowTo), Units.Clock(round.SolarNoon));
        return Say(
            $"Leaves are read from {from} to {to}, about solar noon at {noon}; at the same time each week. Blocks are chosen by what a reading would change. This is advice, not an order.",
            $"Las hojas se leen de {from} a {to}, alrededor del mediodía solar a las {noon}; a la misma hora cada semana. Los bloques se eligen por lo que una lectura cambiaría. Es un consejo, no una orden.");
    }

    public string TakeReadings => Say("Take readings", "Tomar lecturas");

    public string TooLong(double minutes) => Say(
        $"It takes {Units.Number(minutes, 0)} minutes longer than the window. Take a block out, or let two people share it.",
        $"Dura {Units.Number(minutes, 0)} minutos más que la hora buena. Quite un bloque, o que la hagan entre dos.");

    public string InOrder => Say("In walking order", "En el orden de la caminata");

    public string NoStops => Say("No block can be read on this round; below it stands why.", "En esta ronda no se puede leer ningún bloque; abajo dice por qué.");

    /// <summary>A stop without its reason: “6 leaves, stem, 240 m from the block before, put in by hand.”</summary>
    public string Stop(RoundStop stop, bool isAdded)
    {
        ArgumentNullException.ThrowIfNull(stop);
        var leaves = stop.Leaves == 1 ? Say("1 leaf", "1 hoja") : Say($"{stop.Leaves} leaves", $"{stop.Leaves} hojas");
        var walk = stop.WalkM > 0 ? $", {Units.Length(stop.WalkM, 0)} {Say("from the block before", "desde el bloque anterior")}" : "";
        return $"{leaves}, {Measure(stop.Measure)}{walk}{(isAdded ? Say(", put in by hand", ", puesto a mano") : "")}.";
    }

    public string Drop(string block) => Say($"Take {block} out", $"Quitar {block}");

    public string Add(string block) => Say($"Put {block} in", $"Poner {block}");

    public string Forget => Say("Plan it anew without changes by hand", "Planear de nuevo sin los cambios a mano");

    public string Walk => Say("The walk", "La caminata");

    public string Rest => Say("Not on this round", "Fuera de esta ronda");

    public string NoRest => Say("Every block is on it.", "Están todos los bloques.");

    public string Dropped => Say(", taken out by hand", ", quitado a mano");

    public string Worth => Say(
        "What a reading is worth is the fall in trouble and water that is expected when a block’s tension is known before its water is decided, computed from the versions of each block that the outlook holds possible:",
        "Una lectura vale lo que se espera ahorrar en problemas y agua cuando se sabe la tensión del bloque antes de decidir su riego, calculado con las versiones de cada bloque que el pronóstico ve posibles:");

    public string Method => Say("expected value of sample information", "valor esperado de la información de una muestra");

    public string Settings => Say("How the round is walked", "Cómo se camina la ronda");

    public string NothingChanged => Say("Nothing was changed:", "No se cambió nada:");

    public string Between => Say("Between blocks, ", "Entre bloques, ") + Units.Speed.Symbol;

    public string PerLeaf => Say("Minutes a leaf", "Minutos por hoja");

    public string PerBlock => Say("Minutes to set up in a block", "Minutos para instalarse en un bloque");

    public string Precision => Say($"Precision wanted, ± {Units.Pressure.Symbol} (95 %)", $"Precisión deseada, ± {Units.Pressure.Symbol} (95 %)");

    public string PlanSo => Say("Plan the round so", "Planear así la ronda");

    public string AtFirst(RoundSettingsText first)
    {
        ArgumentNullException.ThrowIfNull(first);
        return Say(
            $"At first: {first.Walk} {Units.Speed.Symbol}, {first.MinutesPerLeaf} minutes a leaf, {first.MinutesPerBlock} minutes a block, ± {first.HalfWidth} {Units.Pressure.Symbol}; common practice without a published source.",
            $"Al principio: {first.Walk} {Units.Speed.Symbol}, {first.MinutesPerLeaf} minutos por hoja, {first.MinutesPerBlock} minutos por bloque, ± {first.HalfWidth} {Units.Pressure.Symbol}; práctica común, sin fuente publicada.");
    }

    public string WalkRule => Say("Speed between blocks is", "La velocidad entre bloques va de");

    public string PerLeafRule => Say("A leaf takes", "Una hoja tarda de");

    public string PerBlockRule => Say("Setting up in a block takes", "Instalarse en un bloque tarda de");

    public string PrecisionRule => Say("The precision wanted is", "La precisión deseada va de");

    /// <summary>A rule with its limits and an example: “A leaf takes 0.25 to 15 min, like 1.5.”</summary>
    public string Rule(string what, double low, double high, DisplayUnit unit, double example)
    {
        ArgumentNullException.ThrowIfNull(unit);
        return $"{what} {Units.Trimmed(low)} {Say("to", "a")} {Units.Trimmed(high)} {unit.Symbol}, {Say("like", "como")} {Units.Trimmed(example)}.";
    }

    public string OpenAgain => Say("Open the round again and change it there.", "Abra la ronda otra vez y cámbiela ahí.");

    public string NoRound => Say("There is no round of that day.", "Ese día no tiene ronda.");

    private string NearDay(DateOnly day, DateOnly today) => (day.DayNumber - today.DayNumber) switch
    {
        0 => "hoy",
        1 => "mañana",
        _ => $"el {Day(day)}",
    };
}
