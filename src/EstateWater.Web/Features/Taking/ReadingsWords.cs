using System.Globalization;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Data.Store.Taken;
using EstateWater.Planning.Rounds;
using EstateWater.Web.Features.Rounds;
using EstateWater.Web.Parts.Field;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Web.Features.Taking;

/// <summary>The words of the technician's page.</summary>
/// <param name="language">The reader's language.</param>
/// <param name="units">The reader's units.</param>
public sealed class ReadingsWords(FieldLanguage language, UnitChoice units) : FieldWords(language, units)
{
    public string Title => Say("Readings", "Lecturas");

    public string NoScript => Say(
        "Readings cannot be entered here because scripts are off. Write them down and tell the manager.",
        "Aquí no se pueden anotar lecturas porque el navegador tiene los scripts apagados. Apúntelas en papel y avise al encargado.");

    public string NoEstate => Say("There is no estate yet. Ask the manager to bring it in.", "Todavía no hay finca. Pida al encargado que la cargue.");

    public string NoRound => Say("There is no round for today: choose a block below.", "Hoy no hay ronda: elija un bloque abajo.");

    public string Round(DateOnly day) => Say($"Round of {Day(day)}", $"Ronda del {Day(day)}");

    public string Window(DateTimeOffset from, DateTimeOffset to, DateTimeOffset noon) => Say(
        $"Read leaves and stems from {Clock(from)} to {Clock(to)}; solar noon {Clock(noon)}. Same time each week.",
        $"Lea hojas y tallos de {Clock(from)} a {Clock(to)}; mediodía solar {Clock(noon)}. A la misma hora cada semana.");

    public string Unit => Say("The gauge shows", "El manómetro marca");

    public string OtherBlock => Say("Another block", "Otro bloque");

    public string Choose => Say("Choose a block", "Elija un bloque");

    public string Open => Say("Open", "Abrir");

    public string OnThisPhone => Say("On this phone", "En este teléfono");

    public string StoredToday => Say("Stored today", "Guardado hoy");

    public string Read(string block) => Say($"Read {block}", $"Leer {block}");

    public string Stop(int leaves, WaterPotentialMeasure measure, DateTimeOffset at) => Say(
        $"{leaves} leaves · {Measure(measure)} · about {Clock(at)}", $"{leaves} hojas · {Measure(measure)} · a eso de las {Clock(at)}");

    /// <summary>Why a stop is read.</summary>
    public string Why(RoundStop stop) => new RoundReasons(Language, Units).Of(stop);

    public string LastRead(double meanBar, DateTimeOffset at) => Say(
        $"Last {Units.Tension(meanBar)}, {Day(DateOnly.FromDateTime(at.DateTime))} {Clock(at)}",
        $"La última {Units.Tension(meanBar)}, {Day(DateOnly.FromDateTime(at.DateTime))} {Clock(at)}");

    public string NeverRead => Say("Never read", "Nunca se ha leído");

    public string What => Say("What do you take?", "¿Qué va a tomar?");

    public string Kind(string kind) => kind switch
    {
        "chamber" => Say("Leaves in the chamber", "Hojas en la cámara"),
        "soil" => Say("Soil tube", "Tubo de suelo"),
        "canopy" => Say("Canopy", "Follaje"),
        "stage" => Say("Growth stage", "Etapa"),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "chamber, soil, canopy or stage."),
    };

    public string MeasureTitle => Say("Measure", "Medida");

    public string Hint(WaterPotentialMeasure measure) => measure switch
    {
        WaterPotentialMeasure.Leaf => Say(
            "A full-grown leaf in the sun. From the cut to the chamber in 30 to 60 seconds (common practice).",
            "Una hoja adulta al sol. Del corte a la cámara en 30 a 60 segundos (práctica común)."),
        WaterPotentialMeasure.Stem => Say(
            "A leaf bagged dark and tight for at least 15 minutes, an hour is better. Leave it in its bag; cut to chamber in 30 to 60 seconds (common practice).",
            "Una hoja en bolsa oscura y cerrada al menos 15 minutos, mejor una hora. Déjela en la bolsa; del corte a la cámara en 30 a 60 segundos (práctica común)."),
        _ => Say("Before sunrise, in the dark. From the cut to the chamber in 30 to 60 seconds (common practice).", "Antes de que salga el sol, a oscuras. Del corte a la cámara en 30 a 60 segundos (práctica común)."),
    };

    public string BagNow => Say("Leaves are in the bags now", "Ya están las hojas en las bolsas");

    public string Group => Say("Row or group", "Hilera o grupo");

    public string IfAny => Say("if you like", "si quiere");

    public string Pressure => Say("Pressure of this leaf", "Presión de esta hoja");

    public string AddLeaf => Say("Add leaf", "Agregar hoja");

    public string KeepLeaf => Say("Leave it as it is", "Dejarla como está");

    public string Leaves => Say("Leaves of this set: tap one to correct or remove it", "Hojas de esta serie: toque una para corregirla o quitarla");

    public string Tube => Say("Tube", "Tubo");

    public string SoilAs => Say("The probe shows", "La sonda marca");

    public string SoilContent => Say("water content, %", "humedad, %");

    public string SoilCount => Say("counts", "conteos");

    public string StandardCount => Say("Standard count", "Conteo patrón");

    public string Depths => Say("Depth by depth", "Profundidad por profundidad");

    public string AddDepth => Say("Add a depth", "Agregar profundidad");

    public string ShootLength => Say("Shoot length, ", "Largo del brote, ") + Units.ShortLength.Symbol;

    public string Shade => Say("Ground shaded at noon, %", "Suelo con sombra al mediodía, %");

    public string Tips => Say("Tips still growing, %", "Puntas que aún crecen, %");

    public string Stress => Say("Stress that you see", "Estrés que se ve");

    public string NotLooked => Say("not looked at", "no se miró");

    public string StressSeen(int stress) => stress switch
    {
        0 => Say("0 none", "0 nada"),
        1 => Say("1 tips slowing", "1 puntas más lentas"),
        2 => Say("2 leaves dull or drooping at midday", "2 hojas opacas o caídas al mediodía"),
        3 => Say("3 leaves yellowing or lost", "3 hojas amarillas o caídas al suelo"),
        _ => throw new ArgumentOutOfRangeException(nameof(stress), stress, "0 to 3."),
    };

    public string StageTitle => Say("Stage of most vines (modified E-L number)", "Etapa de la mayoría de las vides (número E-L modificado)");

    public string ChooseStage => Say("Choose a stage", "Elija una etapa");

    public string Stage(double number, string english) => $"{number.ToString(CultureInfo.InvariantCulture)} {Say(english, StageWords.Spanish(number))}";

    public string Note => Say("Note", "Nota");

    public string Save => Say("Save", "Guardar");

    public string Discard => Say("Throw away what is not saved", "Tirar lo que no se ha guardado");

    public string Back => Say("Back to the round", "Volver a la ronda");

    public string CautionTitle => Say("Before you begin", "Antes de empezar");

    public string CautionLead => Say("Advice, not an order.", "Es un consejo, no una orden.");

    public string CautionText => Say(
        "The maker’s instructions and local rules come first, and what you see in the rows.",
        "Primero valen las instrucciones del fabricante y las normas locales, y lo que usted ve en el campo.");

    public string MoreCautions => Say("More cautions: cylinder, heat, sprays", "Más cuidados: cilindro, calor, fumigación");

    public IReadOnlyList<string> Cautions =>
    [
        Say("The chamber holds compressed gas: wear eye protection and never look over the lid.", "La cámara lleva gas a presión: use lentes de seguridad y nunca se asome sobre la tapa."),
        Say("Lock the lid before you open the gas; let all pressure off before you unlock it. Raise the pressure slowly.", "Trabe la tapa antes de abrir el gas; saque toda la presión antes de destrabarla. Suba la presión despacio."),
        Say("Fasten the cylinder in the vehicle and in the rows, valve shut while you walk. Look at hose and seal first.", "Amarre el cilindro en el vehículo y en las hileras, con la válvula cerrada al caminar. Antes revise la manguera y el sello."),
        Say("Midday is the hot hour: not alone, water and shade at hand, rest often, stop when you feel unwell.", "El mediodía es la hora de más calor: no ande solo, lleve agua, descanse a la sombra seguido y pare si se siente mal."),
        Say("Keep out of blocks that were sprayed until the label’s time is over.", "No entre a bloques fumigados hasta que pase el tiempo de la etiqueta."),
    ];

    public string Stored(TakenContent content, string by, DateTimeOffset at)
    {
        var what = content switch
        {
            { Leaves: { } set } => $"{LeafCount(set.Leaves.Count)}, {Measure(set.Measure)}"
                + $", {Units.Tension(set.Leaves.Average(l => l.TensionBar))}",
            { Soil: { } soil } => Say($"tube {soil.Tube}, {soil.Depths.Count} {(soil.Depths.Count == 1 ? "depth" : "depths")}", $"tubo {soil.Tube}, {soil.Depths.Count} {(soil.Depths.Count == 1 ? "profundidad" : "profundidades")}"),
            { Canopy: not null } => Say("canopy", "follaje"),
            _ => Say("stage ", "etapa ") + content.ElStage?.ToString(CultureInfo.InvariantCulture),
        };
        return $"{content.BlockCode}: {what} ({by}, {Clock(at)})";
    }

    /// <summary>Why an entry was not taken, and what to do.</summary>
    public string Refusal(TakenResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return result.Status switch
        {
            TakenStatus.UnknownBlock => Say($"{result.Problem} Tell the manager.", "Ese bloque no existe: avise al encargado."),
            TakenStatus.WrongTime => Say(result.Problem!, "La hora de la lectura no puede ser: revise el reloj del teléfono."),
            TakenStatus.NotTheirs => Say(result.Problem!, $"Esto lo tomó {result.Entry?.TakenBy}: solo esa persona o el encargado lo cambian."),
            TakenStatus.NotStanding => Say($"{result.Problem} Look at what is stored now.", "Esto ya se cambió o se quitó antes: mire lo que vale ahora."),
            TakenStatus.Twice => Say($"{result.Problem} Correct that one instead.", "De este día ya hay uno guardado: corrija ese."),
            _ => Say($"{result.Problem} Tell the manager if yours differ.", "Este registro ya se guardó con otros números: avise al encargado."),
        };
    }

    protected override IReadOnlyDictionary<string, string> Script => new Dictionary<string, string>
    {
        ["opensIn"] = Say("Not yet: the window opens in {0}.", "Todavía no: la hora buena empieza en {0}."),
        ["closesIn"] = Say("Read now: the window closes in {0}.", "Lea ahora: la hora buena termina en {0}."),
        ["closed"] = Say("The window has closed: leave the rest for tomorrow at noon.", "La hora buena ya pasó: deje el resto para mañana al mediodía."),
        ["stands"] = Say(
            "The demo’s clock stands at {0}, outside these hours. Try it all the same: what you save is stored as read at {0}, so the plan will not count a leaf read now.",
            "El reloj de la demostración está parado a las {0}, fuera de esas horas. Pruebe igual: lo que guarde queda con las {0}, y por eso el plan no contará una hoja leída ahora."),
        ["hours"] = Say("{0} h {1} min", "{0} h {1} min"),
        ["minutes"] = Say("{0} min", "{0} min"),
        ["sayWho"] = Say("Say who you are, like “Ana”", "Diga quién es, como «Ana»"),
        ["wrongPressure"] = Say("Pressure must be above 0 and at most {0} {1}, like {2}", "La presión debe ser más de 0 y no más de {0} {1}, como {2}"),
        ["unusual"] = Say("{0} {1} is unusual for a vine. Is it {1}? If so, go on.", "{0} {1} es raro en una vid. ¿Son {1}? Si es así, siga."),
        ["far"] = Say("Far from the others of this set. Look at the leaf and read another of the same vine; tap it below to correct or remove it.", "Muy distinta de las otras de esta serie. Mire la hoja y lea otra de la misma vid; tóquela abajo para corregirla o quitarla."),
        ["leaf"] = Say("Leaf {0}: {1} {2}", "Hoja {0}: {1} {2}"),
        ["farMark"] = Say("far from the others", "muy distinta"),
        ["addLeaf"] = Say("Add leaf {0}", "Agregar hoja {0}"),
        ["changeLeaf"] = Say("Change leaf {0}", "Cambiar hoja {0}"),
        ["removeLeaf"] = Say("Remove leaf {0}", "Quitar hoja {0}"),
        ["bringLeafBack"] = Say("Bring {0} {1} back", "Recuperar {0} {1}"),
        ["running"] = Say("Mean {0} ± {1} {3}, spread {2} {3}", "Promedio {0} ± {1} {3}, variación {2} {3}"),
        ["runningOne"] = Say("Mean {0} {1}", "Promedio {0} {1}"),
        ["moreLeaves"] = Say("{0} more leaves for ± {1} {2}", "faltan {0} hojas para ± {1} {2}"),
        ["oneMoreLeaf"] = Say("1 more leaf for ± {0} {1}", "falta 1 hoja para ± {0} {1}"),
        ["enough"] = Say("enough for ± {0} {1}", "alcanza para ± {0} {1}"),
        ["readAgain"] = Say("leaf {0} is far from the others: read it again; without it {1}", "la hoja {0} es muy distinta: léala otra vez; sin ella {1}"),
        ["addFirst"] = Say("Add this leaf first, or clear the field", "Primero agregue esta hoja, o borre el número"),
        ["noLeaves"] = Say("Add at least one leaf", "Agregue al menos una hoja"),
        ["otherMeasure"] = Say("This set has {0}, measured as {1}.", "Esta serie tiene {0}, medida como {1}."),
        ["beginSet"] = Say("Save it and begin a new set: {0}", "Guardarla y empezar otra serie: {0}"),
        ["changeMeasure"] = Say("It was {0} all along: change the set", "Toda era {0}: cambiar la serie"),
        ["keepMeasure"] = Say("Go on with {0}", "Seguir con {0}"),
        ["inBag"] = Say("In the bag for {0} min: wait until 15, an hour is better", "En la bolsa hace {0} min: espere a los 15, mejor una hora"),
        ["bagReady"] = Say("In the bag for {0} min: ready; an hour is better", "En la bolsa hace {0} min: lista; mejor una hora"),
        ["bagGood"] = Say("In the bag for {0} min: ready", "En la bolsa hace {0} min: lista"),
        ["depth"] = Say("Depth, ", "Profundidad, ") + Units.ShortLength.Symbol,
        ["content"] = Say("Water, %", "Humedad, %"),
        ["count"] = Say("Count", "Conteo"),
        ["wrongTube"] = Say("Name the tube, like T1", "Ponga el tubo, como T1"),
        ["wrongDepth"] = Say($"Depth must be above 0 and at most {ReadingLimits.Depth(Units)}; each once", $"La profundidad va de 0 a {ReadingLimits.Depth(Units, "como")}; cada una una vez"),
        ["wrongContent"] = Say("Water content is 0 to 100 %, like 24.5", "La humedad va de 0 a 100 %, como 24,5"),
        ["wrongCount"] = Say("A count is 0 or more, like 6200", "El conteo es 0 o más, como 6200"),
        ["wrongStandard"] = Say("Counts need the standard count of the session, like 12000", "Con conteos hace falta el conteo patrón, como 12000"),
        ["noDepths"] = Say("Fill in at least one depth", "Llene al menos una profundidad"),
        ["wrongShoot"] = Say($"Shoot length is 0 to {ReadingLimits.Shoot(Units)}", $"El brote mide de 0 a {ReadingLimits.Shoot(Units, "como")}"),
        ["wrongPercent"] = Say("0 to 100 %, like 35", "De 0 a 100 %, como 35"),
        ["noCanopy"] = Say("Enter at least one thing that you saw", "Anote al menos una cosa que vio"),
        ["noStage"] = Say("Choose the stage", "Elija la etapa"),
        ["save.chamber"] = Say("Save this set", "Guardar esta serie"),
        ["save.soil"] = Say("Save this tube", "Guardar este tubo"),
        ["save.canopy"] = Say("Save this visit", "Guardar esta visita"),
        ["save.stage"] = Say("Save this stage", "Guardar esta etapa"),
        ["correcting"] = Say("Correcting what was saved {0}", "Corrigiendo lo guardado a las {0}"),
        ["bringBack"] = Say("Bring it back", "Recuperarlo"),
        ["discard"] = Discard,
        ["leafCount"] = Say("{0} leaves", "{0} hojas"),
        ["leafCountOne"] = Say("1 leaf", "1 hoja"),
        ["depthCount"] = Say("{0} depths", "{0} profundidades"),
        ["depthCountOne"] = Say("1 depth", "1 profundidad"),
        ["unsavedLeaves"] = Say("{0}: {1} not saved yet", "{0}: {1} sin guardar"),
        ["unsaved"] = Say("{0}: not saved yet", "{0}: sin guardar"),
        ["draft"] = Say("{0}, not saved yet", "{0}, sin guardar"),
        ["draftOther"] = Say("begun, not saved yet", "empezado, sin guardar"),
        ["said.chamber"] = Say("{0}: {1}, {2}, {3} {4}", "{0}: {1}, {2}, {3} {4}"),
        ["said.soil"] = Say("{0}: tube {1}, {2}", "{0}: tubo {1}, {2}"),
        ["said.canopy"] = Say("{0}: canopy", "{0}: follaje"),
        ["said.stage"] = Say("{0}: stage {1}", "{0}: etapa {1}"),
        ["said.withdrawal"] = Say("{0}: taken back", "{0}: quitado"),
        ["kind.chamber"] = Kind("chamber"),
        ["kind.soil"] = Kind("soil"),
        ["kind.canopy"] = Kind("canopy"),
        ["kind.stage"] = Kind("stage"),
        ["measure.leaf"] = Measure(WaterPotentialMeasure.Leaf),
        ["measure.stem"] = Measure(WaterPotentialMeasure.Stem),
        ["measure.predawn"] = Measure(WaterPotentialMeasure.Predawn),
        ["hint.leaf"] = Hint(WaterPotentialMeasure.Leaf),
        ["hint.stem"] = Hint(WaterPotentialMeasure.Stem),
        ["hint.predawn"] = Hint(WaterPotentialMeasure.Predawn),
        ["correct"] = Say("Correct {0}", "Corregir {0}"),
        ["withdraw"] = Say("Take {0} back", "Quitar {0}"),
        ["forget"] = Say("Forget {0}", "Olvidar {0}"),
        ["nothingYet"] = Say("Nothing was entered on this phone in the last days.", "En estos días no se ha anotado nada en este teléfono."),
    };

    private string LeafCount(int leaves) => leaves == 1 ? Say("1 leaf", "1 hoja") : Say($"{leaves} leaves", $"{leaves} hojas");
}
