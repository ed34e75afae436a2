using System.Text.Json;
using System.Text.RegularExpressions;
using EstateWater.Agronomy.Phenology;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Planning.Rounds;
using EstateWater.Web.Features.Taking;
using EstateWater.Web.Parts.Field;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Tests.Web.Taking;

public sealed partial class ReadingsWordsTests
{
    private static DateTimeOffset At(int hour, int minute) => new(2025, 1, 22, hour, minute, 0, TimeSpan.FromHours(2));

    private static readonly string Scripts = Path.Combine(Repository.Root, "src", "EstateWater.Web", "wwwroot", "taking");

    [Fact]
    public void Every_word_that_the_scripts_say_is_there_in_both_languages_with_the_same_places()
    {
        var (english, spanish) = (Words(FieldLanguage.English), Words(FieldLanguage.Spanish));
        var said = Directory.GetFiles(Scripts, "*.js").SelectMany(file => SayRegex().Matches(File.ReadAllText(file))).Select(m => m.Groups[1].Value).Distinct().ToList();
        Assert.True(said.Count > 30);
        Assert.All(said, name => Assert.True(english.ContainsKey(name), name));
        Assert.Equal(english.Keys, spanish.Keys);
        Assert.All(english, word => Assert.Equal(Places(word.Value), Places(spanish[word.Key])));
        Assert.All(english.Where(w => w.Value.Count(char.IsLetter) > 6), word => Assert.NotEqual(word.Value, spanish[word.Key]));
    }

    public static TheoryData<ReadingQuestion, string> Questions => new()
    {
        {
            new(WaterPotentialMeasure.Leaf, 7, 6.5, new(new DateOnly(2025, 1, 23), 12.14, 14.86, 14)),
            "Sin agua puede llegar a entre 12,1 y 14,9 bar el jue 23 ene (tope 14,0): la lectura dice si sus 6,5 h están bien. Se leyó hace 7 días."
        },
        {
            new(WaterPotentialMeasure.Stem, null, 0, new(new DateOnly(2025, 1, 23), 12.14, 14.86, 14)),
            "Sin agua puede llegar a entre 12,1 y 14,9 bar el jue 23 ene (tope 14,0): la lectura dice si puede quedarse sin agua. Nunca se ha leído (tallo)."
        },
        { new(WaterPotentialMeasure.Leaf, 0, 6, null), "Se leyó hoy. Otra lectura casi no cambiaría este plan: su agua está bien, marque lo que marque." },
        { new(WaterPotentialMeasure.Leaf, 1, 0, null), "Se leyó ayer. Otra lectura casi no cambiaría este plan: está bien sin agua, marque lo que marque." },
        { new(WaterPotentialMeasure.Leaf, null, 0, null), "Nunca se ha leído (hoja): su primera serie enseña cómo es el bloque." },
    };

    [Theory]
    [MemberData(nameof(Questions))]
    public void A_reason_is_told_in_spanish_from_its_facts(ReadingQuestion question, string spanish)
    {
        var stop = TakingPartsTests.Stop("B1", 0) with { Question = question };
        Assert.Equal(spanish, new ReadingsWords(FieldLanguage.Spanish, UnitChoice.Metric with { Numbers = NumberStyle.Comma }).Why(stop));
        Assert.Equal("Because.", new ReadingsWords(FieldLanguage.English, UnitChoice.Metric).Why(stop));
    }

    [Fact]
    public void A_reason_is_told_in_the_readers_units_and_without_facts_as_it_was_kept()
    {
        var stop = TakingPartsTests.Stop("B1", 0);
        var words = new ReadingsWords(FieldLanguage.Spanish, UnitChoice.Metric with { Pressure = DisplayUnit.Megapascal });
        var question = new ReadingQuestion(WaterPotentialMeasure.Leaf, 7, 6, new(new DateOnly(2025, 1, 23), 12, 15, 14));
        Assert.Contains("entre 1.20 y 1.50 MPa el jue 23 ene (tope 1.40)", words.Why(stop with { Question = question }), StringComparison.Ordinal);
        Assert.Equal("Because.", words.Why(stop));
    }

    [Fact]
    public void The_window_is_told_by_the_readers_clock()
    {
        var (from, noon, to) = (At(12, 25), At(13, 25), At(14, 55));
        Assert.StartsWith("Read leaves and stems from 12:25 PM to 2:55 PM; solar noon 1:25 PM.", new ReadingsWords(FieldLanguage.English, UnitChoice.Us).Window(from, to, noon), StringComparison.Ordinal);
        Assert.StartsWith("Read leaves and stems from 12:25 to 14:55; solar noon 13:25.", new ReadingsWords(FieldLanguage.English, UnitChoice.Metric).Window(from, to, noon), StringComparison.Ordinal);
    }

    // 1000 cm are 393.7 in, 40 cm 15.7 in, 95 cm 37.4 in.
    [Theory]
    [InlineData(FieldLanguage.English, false, "Depth, cm", "Depth must be above 0 and at most 1000 cm, like 40; each once", "Shoot length is 0 to 1000 cm, like 95")]
    [InlineData(FieldLanguage.English, true, "Depth, in", "Depth must be above 0 and at most 393 in, like 16; each once", "Shoot length is 0 to 393 in, like 37")]
    [InlineData(FieldLanguage.Spanish, true, "Profundidad, in", "La profundidad va de 0 a 393 in, como 16; cada una una vez", "El brote mide de 0 a 393 in, como 37")]
    public void Lengths_are_asked_for_and_refused_in_the_readers_unit(FieldLanguage language, bool inches, string depth, string wrongDepth, string wrongShoot)
    {
        var units = inches ? UnitChoice.Us : UnitChoice.Metric;
        var words = Words(language, units);
        Assert.Equal((depth, wrongDepth, wrongShoot), (words["depth"], words["wrongDepth"], words["wrongShoot"]));
        Assert.EndsWith(inches ? ", in" : ", cm", new ReadingsWords(language, units).ShootLength, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_stage_has_a_spanish_name() => Assert.All(GrowthStages.All, stage => Assert.NotEmpty(StageWords.Spanish(stage.ElStage)));

    [Fact]
    public void The_phone_gets_the_numbers_of_the_servers_checks()
    {
        var numbers = JsonDocument.Parse(FieldNumbers.For(new RoundSettings { HalfWidthBar = 0.8 }).ToJson()).RootElement;
        Assert.Equal(0.8, numbers.GetProperty("halfWidthBar").GetDouble());
        // Tabulated t at 95 %, two-sided: 12.706 with 1 and 2.262 with 9 degrees of freedom (NIST/SEMATECH e-Handbook 1.3.6.7.2).
        Assert.Equal(12.706, numbers.GetProperty("t")[0].GetDouble(), 3);
        Assert.Equal(2.262, numbers.GetProperty("t")[8].GetDouble(), 3);
        Assert.Equal(3.5, numbers.GetProperty("outlierZ").GetDouble());
    }

    private static Dictionary<string, string> Words(FieldLanguage language, UnitChoice? units = null) =>
        JsonSerializer.Deserialize<Dictionary<string, string>>(new ReadingsWords(language, units ?? UnitChoice.Metric).ScriptJson)!;

    private static string Places(string text) => string.Concat(PlaceRegex().Matches(text).Select(m => m.Value).Distinct().Order(StringComparer.Ordinal));

    [GeneratedRegex("say\\(\"([A-Za-z.]+)\"")]
    private static partial Regex SayRegex();

    [GeneratedRegex(@"\{\d\}")]
    private static partial Regex PlaceRegex();
}
