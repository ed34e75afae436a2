using CsCheck;
using EstateWater.Agronomy.Units;
using EstateWater.Data.Model;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Tests.Web.Units;

// Expected values: the definitions of the units (inch 25.4 mm, gallon 231 in³, acre 43 560 ft², 10 bar = 1 MPa), worked by hand beside each.
public sealed class UnitChoiceTests
{
    private static readonly UnitChoice Mpa = UnitChoice.Us with { Pressure = DisplayUnit.Megapascal, Volume = DisplayUnit.AcreInch };

    [Fact]
    public void Metric_is_told_as_the_estate_keeps_it()
    {
        var units = UnitChoice.Metric;
        Assert.Equal("13.2 bar", units.Tension(13.24));
        Assert.Equal("9.8 mm", units.DepthOf(9.84));
        Assert.Equal("41\u202F000 m³", units.VolumeOf(41_000.4));
        Assert.Equal("28.4\u00A0m³/h", units.Flow(28.4));
        Assert.Equal("2.1 ha", units.AreaOf(21_400));
        Assert.Equal("39 °C", units.TemperatureOf(39));
        Assert.Equal("0.9 m", units.Length(0.9));
        Assert.Equal("30 cm", units.ShortLengthOf(30));
        Assert.Equal("1.00\u00A0m", units.Span(1));
        Assert.Equal("12–18 Jan", units.Days(new DateOnly(2025, 1, 12), new DateOnly(2025, 1, 18)));
    }

    [Fact]
    public void Us_units_are_as_fine_as_metric_ones()
    {
        var units = UnitChoice.Us;
        Assert.Equal("13.2 bar", units.Tension(13.24));
        Assert.Equal("0.39 in", units.DepthOf(9.84)); // 9.84 ∕ 25.4 = 0.387
        Assert.Equal("264,200 gal", units.VolumeOf(1000)); // 1000 ∕ 0.003785411784 = 264 172
        Assert.Equal("79 gal", units.VolumeOf(0.3)); // 79.25
        Assert.Equal("125\u00A0gal/min", units.Flow(28.4)); // 28.4 ∕ 0.22712470704 = 125.04
        Assert.Equal("5.3 ac", units.AreaOf(21_400)); // 21 400 ∕ 4046.8564224 = 5.288
        Assert.Equal("102 °F", units.TemperatureOf(39)); // 102.2
        Assert.Equal("3.0 ft", units.Length(0.9)); // 2.95
        Assert.Equal("12 in", units.ShortLengthOf(30)); // 11.8
        Assert.Equal("39\u00A0in", units.Span(1)); // 39.37
        Assert.Equal("Jan 12–18", units.Days(new DateOnly(2025, 1, 12), new DateOnly(2025, 1, 18)));
        Assert.Equal("Jan 28–Feb 3", units.Days(new DateOnly(2025, 1, 28), new DateOnly(2025, 2, 3)));
    }

    [Fact]
    public void Megapascals_and_acre_inches_too()
    {
        Assert.Equal("1.32 MPa", Mpa.Tension(13.24));
        Assert.Equal("9.73 acre-in", Mpa.VolumeOf(1000)); // 1000 ∕ 102.79015312896 = 9.7286
        Assert.Equal("0.28\u00A0acre-in/h", Mpa.Flow(28.4)); // 0.2763
    }

    [Fact]
    public void Sentences_of_the_plan_are_told_in_them()
    {
        var words = Sentence.Of($"{Quantity.TensionOfMpa(1.32)} on {new DateOnly(2025, 1, 22):d MMM}, rising {Quantity.TensionOfMpa(0.04) with { IsBare = true }} a day, {Quantity.Temperature(39)}; {Quantity.Volume(1000)} at {Quantity.Flow(28.4)} for {6.25:0.##} h");
        Assert.Equal("13.2 bar on 22 Jan, rising 0.4 a day, 39 °C; 1\u202F000 m³ at 28.4\u00A0m³/h for 6.25 h", words.In(UnitChoice.Metric));
        Assert.Equal("1.32 MPa on Jan 22, rising 0.04 a day, 102 °F; 9.73 acre-in at 0.28\u00A0acre-in/h for 6.25 h", words.In(Mpa));
        Assert.EndsWith("for 6,25 h", words.In(UnitChoice.Metric with { Numbers = NumberStyle.Comma }), StringComparison.Ordinal);
    }

    [Fact]
    public void Days_and_times_follow_the_style()
    {
        var at = new DateTimeOffset(2025, 1, 22, 20, 5, 0, TimeSpan.FromHours(2));
        Assert.Equal("Wed 22 Jan 2025, 20:05", UnitChoice.Metric.Moment(at));
        Assert.Equal("Wed Jan 22, 2025, 8:05 PM", UnitChoice.Us.Moment(at));
        Assert.Equal("Wed Jan 22", UnitChoice.Us.Day(new DateOnly(2025, 1, 22)));
        Assert.Equal("Wednesday January 22, 2025", UnitChoice.Us.Date(new DateOnly(2025, 1, 22), "dddd d MMMM yyyy"));
    }

    [Fact]
    public void A_choice_is_kept_as_one_word()
    {
        Gen.Select(Gen.OneOf([.. UnitChoice.Questions.SelectMany(q => q.Units.Select(u => Gen.Const((q, u))))]), Gen.OneOf([.. NumberStyle.All.Select(Gen.Const)])).Sample((one, style) =>
        {
            var choice = one.q.With(UnitChoice.Us, one.u) with { Numbers = style };
            Assert.Equal(choice, UnitChoice.Parse(choice.Key));
        });
        Assert.Null(UnitChoice.Parse("bar.mm"));
        Assert.Null(UnitChoice.Parse(null));
        Assert.Equal(UnitChoice.Metric, UnitChoice.Parse("x.x.x.x.x.x"));
        Assert.Equal(UnitChoice.Us, UnitChoice.Usual(DisplayUnits.Us));
    }

    // A figure never changes by being shown and typed again in any unit.
    [Fact]
    public void What_is_typed_in_any_unit_is_shown_again_as_it_was_typed() =>
        Gen.Select(Gen.Int[0, 9_999_999], Gen.Int[0, 3], Gen.OneOf([.. UnitChoice.Questions.SelectMany(q => q.Units).Select(Gen.Const)])).Sample((digits, decimals, unit) =>
        {
            var typed = (digits / Math.Pow(10, decimals)).ToString("0.###", System.Globalization.CultureInfo.InvariantCulture);
            var kept = TypedQuantity.Read(typed.Replace('.', ','), unit);
            Assert.Equal(typed, TypedQuantity.Show(kept!.Value, unit));
        });

    [Theory]
    [InlineData("100 gal", 0.3785411784)] // 100 · 231 in³
    [InlineData("100gal", 0.3785411784)]
    [InlineData(" 1,5 ", 0.005678117676)]
    [InlineData("1,234.5", null)]
    [InlineData("much", null)]
    [InlineData("", null)]
    public void Typed_gallons_become_cubic_metres(string text, double? m3)
    {
        var read = TypedQuantity.Read(text, DisplayUnit.Gallon);
        Assert.Equal(m3 is null, read is null);
        Assert.Equal(m3 ?? 0, read ?? 0, 1e-15);
    }

    // By definition: 1 MPa is 10 bar, 1 in 2.54 cm, 1 US gallon 231 in³ = 0.003785411784 m³, 1 h 60 min.
    public static TheoryData<string, string, double?> TypedWithUnits => new()
    {
        { "1.3 MPa", "bar", 13 },
        { "13 bar", "mpa", 13 },
        { "1,3mpa", "mpa", 13 },
        { "1.1 MPa", "bar", 11 },
        { "190 psi", "bar", null },
        { "37.5 in", "cm", 95.25 },
        { "12\"", "cm", 30.48 },
        { "95 CM", "in", 95 },
        { "1.2 m", "in", 120 },
        { "100 gal", "m3", 0.3785411784 },
        { "171.5 m³", "gal", 171.5 },
        { "171.5 m3", "gal", 171.5 },
        { "90 min", "h", 1.5 },
        { "6,5 h", "h", 6.5 },
        { "35 %", "percent", 35 },
        { "35 cm", "percent", null },
        { "6200", "", 6200 },
        { "6200 cm", "", null },
        { "12 constructor", "bar", null },
    };

    [Theory]
    [MemberData(nameof(TypedWithUnits))]
    public void A_number_with_a_unit_beside_it_is_read_in_that_unit_whatever_is_chosen(string text, string chosen, double? kept)
    {
        var unit = TypedKind.All.SelectMany(kind => kind.Units).First(u => u.Key == chosen && u != DisplayUnit.Inch);
        Assert.Equal(kept, TypedQuantity.Read(text, unit));
        Assert.Equal(kept is null, TypedQuantity.StrangeUnit(text, unit) is not null);
    }

    [Theory]
    [InlineData("much")]
    [InlineData("1,234.5 bar")]
    [InlineData("-3")]
    [InlineData("")]
    public void What_is_no_number_has_no_strange_unit(string text)
    {
        Assert.Null(TypedQuantity.Read(text, DisplayUnit.Bar));
        Assert.Null(TypedQuantity.StrangeUnit(text, DisplayUnit.Bar));
    }

    [Fact]
    public void Degrees_go_there_and_back()
    {
        Assert.Equal(212, DisplayUnit.Fahrenheit.Show(100), 1e-12);
        Assert.Equal(-40, DisplayUnit.Fahrenheit.Keep(-40), 1e-12);
    }
}
