using System.Text.Json;
using EstateWater.Agronomy.Units;

namespace EstateWater.Tests.Units;

public sealed class SentenceTests
{
    private static readonly Sentence Words = Sentence.Of($"{Quantity.TensionOfMpa(1.32)} on {new DateOnly(2025, 1, 22):d MMM}, {2} leaves");

    [Fact]
    public void Documents_have_it_in_the_units_of_the_estate_folder()
    {
        Assert.Equal("13.2 bar on 22 Jan, 2 leaves", Words.ToString());
        Assert.Equal("\"13.2 bar on 22 Jan, 2 leaves\"", JsonSerializer.Serialize(Words));
        Assert.Equal(Words, JsonSerializer.Deserialize<Sentence>(JsonSerializer.Serialize(Words)));
    }

    [Fact]
    public void A_kept_sentence_keeps_its_quantities_and_plain_text_is_read_as_well()
    {
        var keeping = new JsonSerializerOptions { Converters = { new SentenceKeeping() } };
        var words = Sentence.Of($"{Words}, at {new DateTimeOffset(2025, 1, 22, 6, 0, 0, TimeSpan.FromHours(2)):HH:mm} {6.25:0.##} h of {Quantity.Volume(1000) with { IsBare = true, Groups = true }} m³");
        var kept = JsonSerializer.Deserialize<Sentence>(JsonSerializer.Serialize(words, keeping), keeping)!;
        Assert.Equal("[Tension] on (d MMM), () leaves, at (HH:mm) (0.##) h of [Volume] m³", kept.In(new Marks()));
        Assert.Equal("13.2 bar on 22 Jan, 2 leaves, at 06:00 6.25 h of 1,000 m³", kept.ToString());
        Assert.Equal("13.2 bar", JsonSerializer.Deserialize<Sentence>("\"13.2 bar\"", keeping)!.ToString());
    }

    [Fact]
    public void A_reader_is_told_the_same_facts_in_another_manner() => Assert.Equal("[Tension] on (d MMM), () leaves", Words.In(new Marks()));

    [Fact]
    public void Sentences_within_sentences_keep_their_quantities()
    {
        var joined = Sentence.Join("; ", [Words, "and so on."]);
        Assert.Equal("So: [Tension] on (d MMM), () leaves; and so on!", Sentence.Of($"So: {joined.WithoutFullStop()}!").In(new Marks()));
        Assert.Equal("", Sentence.Join("; ", []).ToString());
    }

    [Theory]
    [InlineData(0, false, false, "1235")]
    [InlineData(0, false, true, "1,235")]
    [InlineData(1, false, false, "1234.5")]
    [InlineData(2, true, false, "1234.5")]
    public void A_quantity_is_told_as_finely_as_it_says(int decimals, bool trims, bool groups, string number)
    {
        var volume = new Quantity(QuantityKind.Volume, 1234.5, decimals) { Trims = trims, Groups = groups };
        Assert.Equal(number + " m³", volume.ToString());
        Assert.Equal(number, (volume with { IsBare = true }).ToString());
    }

    private sealed class Marks : IWording
    {
        public string Tell(Quantity quantity) => $"[{quantity.Kind}]";

        public string Tell(IFormattable value, string? format) => $"({format})";
    }
}
