using EstateWater.Agronomy.Units;
using EstateWater.Planning.Rounds;
using EstateWater.Web.Parts.Field;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Web.Features.Rounds;

/// <summary>Why blocks are on a round or not, as its readers are told. Reasons that were kept without their facts stay in English.</summary>
/// <param name="language">The reader's language.</param>
/// <param name="units">The reader's units.</param>
public sealed class RoundReasons(FieldLanguage language, UnitChoice units) : FieldWords(language, units)
{
    /// <summary>Why a stop is read.</summary>
    public string Of(RoundStop stop)
    {
        ArgumentNullException.ThrowIfNull(stop);
        return Of(stop.Reason, null, stop.Question);
    }

    /// <summary>Why a block is left out.</summary>
    public string Of(RoundRest rest)
    {
        ArgumentNullException.ThrowIfNull(rest);
        return Of(rest.Reason, rest.Closed, rest.Question);
    }

    private string Of(Sentence english, ClosedToReading? closed, ReadingQuestion? question) => (closed, question) switch
    {
        ({ } why, _) => Say(english.In(Units), InSpanish(why)),
        (_, { } facts) => Say(english.In(Units), InSpanish(facts)),
        _ => english.In(Units),
    };

    private static string InSpanish(ClosedToReading closed) => closed switch
    {
        ClosedToReading.Predawn => "Se lee antes del alba: antes de que salga el sol, no en esta ronda.",
        ClosedToReading.NoLeaves => "No tiene hojas que leer.",
        ClosedToReading.ReadAlready => "Ya se leyó este día.",
        _ => throw new ArgumentOutOfRangeException(nameof(closed), closed, "A reason of the list."),
    };

    private string InSpanish(ReadingQuestion question)
    {
        var never = $"Nunca se ha leído ({Measure(question.Measure)})";
        var age = question.DaysSinceRead switch
        {
            null => null,
            0 => "Se leyó hoy.",
            1 => "Se leyó ayer.",
            var days => $"Se leyó hace {days} días.",
        };
        if (question.IsReadAgain)
        {
            return $"{age} Su última serie es dudosa: hay que leerlo otra vez antes de creerla.".TrimStart();
        }

        if (question.Open is not { } open)
        {
            return age is null
                ? $"{never}: su primera serie enseña cómo es el bloque."
                : $"{age} Otra lectura casi no cambiaría este plan: {(question.PlannedHours > 0 ? "su agua está bien" : "está bien sin agua")}, marque lo que marque.";
        }

        var asks = question.PlannedHours > 0 ? $"si sus {Units.Hours(question.PlannedHours)} están bien" : "si puede quedarse sin agua";
        return $"Sin agua puede llegar a entre {Units.BareTension(open.P10Bar)} y {Units.Tension(open.P90Bar)} el {Day(open.Day)} (tope {Units.BareTension(open.CeilingBar)}): la lectura dice {asks}. {age ?? never + "."}";
    }
}
