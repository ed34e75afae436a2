using System.Security.Claims;
using EstateWater.Web.Access;

namespace EstateWater.Tests.Web.Access;

public sealed class AccessRulesTests
{
    [Theory]
    [InlineData("/week", "/week")]
    [InlineData("/blocks/B1?range=2w#soil", "/blocks/B1?range=2w#soil")]
    [InlineData("//elsewhere.example", null)]
    [InlineData("/\\elsewhere.example", null)]
    [InlineData("/a\\..\\..", null)]
    [InlineData("/\t/elsewhere.example", null)]
    [InlineData("https://elsewhere.example", null)]
    [InlineData("week", null)]
    [InlineData("", null)]
    [InlineData(null, null)]
    public void Only_a_path_of_ours_is_a_return_address(string? text, string? local) => Assert.Equal(local, ReturnAddress.Local(text));

    [Theory]
    [InlineData("password2026!")]
    [InlineData("PASSWORD12345")]
    [InlineData("1234567890")]
    [InlineData("aaaaaaaaaaaa")]
    [InlineData("abababababab")]
    [InlineData("qwertyuiop")]
    [InlineData("Estate Water 1")]
    [InlineData("contraseña99")]
    public void Passwords_that_are_tried_first_are_refused(string password) => Assert.True(PasswordRules.IsCommon(password));

    [Theory]
    [InlineData("gate rain seven boots")]
    [InlineData("puerta lluvia siete botas")]
    [InlineData("mmxxvi-kestrel")]
    public void Plain_words_are_a_good_password(string password) => Assert.False(PasswordRules.IsCommon(password));

    // Five bits a letter of an alphabet of 32; at least 128 bits are wanted.
    [Fact]
    public void A_code_has_128_random_bits_at_least_and_no_letter_that_reads_like_another()
    {
        var codes = Enumerable.Range(0, 200).Select(_ => OneTimeSecret.Plain(OneTimeSecret.NewCode())).ToList();
        Assert.All(codes, code => Assert.True(code.Length * 5 >= 128));
        Assert.All(codes, code => Assert.DoesNotContain(code, letter => "ILOU".Contains(letter)));
        Assert.Equal(32, codes.SelectMany(code => code).Distinct().Count());
        Assert.Equal(200, codes.Distinct().Count());
    }

    [Theory]
    [InlineData("Ben", null, "Ben")]
    [InlineData("Ben", " Ben ", "Ben")]
    [InlineData("Ana", "Ben", "Ana for Ben")]
    [InlineData(null, " Ben ", "Ben")]
    public void What_is_done_stands_under_the_name_of_whoever_signed_in(string? signedIn, string? typed, string name)
    {
        Claim[] claims = signedIn is null ? [] : [new(ClaimTypes.Name, signedIn)];
        Assert.Equal(name, new ClaimsPrincipal(new ClaimsIdentity(claims, "test")).ActsAs(typed));
    }

    [Theory]
    [InlineData("  Ana   Ruiz ", "Ana Ruiz", true)]
    [InlineData("  ", "", false)]
    [InlineData("An\u200Ba", "An\u200Ba", false)]
    [InlineData("Ana\u202EziuR", "Ana\u202EziuR", false)]
    public void A_name_is_what_people_can_see(string typed, string cleaned, bool isGood)
    {
        Assert.Equal(cleaned, PersonName.Clean(typed));
        Assert.Equal(isGood, PersonName.IsGood(cleaned));
    }
}
