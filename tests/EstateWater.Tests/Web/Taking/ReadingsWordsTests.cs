using System.Text.Json;
using System.Text.RegularExpressions;
using EstateWater.Agronomy.Phenology;
using EstateWater.Planning.Rounds;
using EstateWater.Web.Features.Taking;
using EstateWater.Web.Parts.Field;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Tests.Web.Taking;

public sealed partial class ReadingsWordsTests
{
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

    private static Dictionary<string, string> Words(FieldLanguage language) => JsonSerializer.Deserialize<Dictionary<string, string>>(new ReadingsWords(language, UnitChoice.Metric).ScriptJson)!;

    private static string Places(string text) => string.Concat(PlaceRegex().Matches(text).Select(m => m.Value).Distinct().Order(StringComparer.Ordinal));

    [GeneratedRegex("say\\(\"([A-Za-z.]+)\"")]
    private static partial Regex SayRegex();

    [GeneratedRegex(@"\{\d\}")]
    private static partial Regex PlaceRegex();
}
