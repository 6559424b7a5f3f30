namespace MakerStudio.Services.Accounts;

/// <summary>
/// Passwords that are tried first. Both lists were put together from memory of published lists of frequent passwords;
/// no list was copied. Patterns (runs, repeats, names) are caught by <see cref="PassphraseRules"/> and need no line here.
/// </summary>
internal static class CommonPassphrases
{
    /// <summary>Whole ones of 12 letters and more, in small letters.</summary>
    public static readonly HashSet<string> Whole = new(StringComparer.Ordinal)
    {
        "123456789abc", "1234567890ab", "1234567890abc", "abc123456789", "a1b2c3d4e5f6", "a123456789012", "aa1234567890", "123123123123", "112233445566", "123321123321",
        "147258369147", "159753159753", "159357159357", "789456123789", "741852963741", "1q2w3e4r5t6y", "1q2w3e4r5t6y7u", "1q2w3e4r5t6y7u8i", "q1w2e3r4t5y6", "q1w2e3r4t5y6u7",
        "1qaz2wsx3edc", "1qaz2wsx3edc4rfv", "zaq12wsxcde3", "zaq1xsw2cde3", "!qaz2wsx#edc", "qazwsxedcrfv", "qazwsxedc123", "qwer1234asdf", "qwerasdfzxcv", "asdf1234qwer",
        "asdfzxcv1234", "qweasdzxc123", "123qweasdzxc", "1234qwerasdf", "zxcvbnm12345", "qwerty123456", "qwertyuiop12", "123456qwerty", "qwerty654321", "asdfghjkl123",
        "correcthorsebatterystaple", "correct horse battery staple", "correct-horse-battery-staple", "correcthorse", "horsebatterystaple", "tobeornottobe", "to be or not to be",
        "thequickbrownfox", "the quick brown fox", "thequickbrownfoxjumps", "loremipsumdolor", "lorem ipsum dolor", "onceuponatime", "once upon a time", "itwasthebestoftimes",
        "maytheforcebewithyou", "may the force be with you", "openthedoorplease", "imfeelinglucky", "whatsthepassword", "thisismypassword", "this is my password", "mypasswordis",
        "thisisapassword", "this is a password", "notapassword", "enterpassword", "forgotpassword", "nopasswordhere", "ihatepasswords", "i hate passwords", "rememberthis",
        "unbelievable", "administrator", "administrator1", "superadministrator", "rootpassword", "defaultpassword", "temporarypassword", "changethispassword", "pleasechangeme",
        "christopher1", "alexander123", "elizabeth123", "manchesterunited", "manchester united", "liverpoolfc1", "chelseafc123", "realmadrid123", "barcelona1234", "galatasaray1905",
        "fenerbahce1907", "besiktas1903", "slipknot6666", "metallica666", "harrypotter1", "harrypotter7", "starwars1977", "spongebob123", "hellokitty123", "supermario64",
        "pokemon12345", "pikachu12345", "naruto123456", "dragonball123", "minecraft123", "counterstrike", "callofduty123", "worldofwarcraft", "leagueoflegends", "playstation3",
        "playstation4", "playstation5", "microsoft123", "windows12345", "samsung12345", "facebook1234", "linkedin1234", "instagram123", "google123456",
        "iloveyousomuch", "i love you so much", "iloveyouforever", "iloveyou4ever", "iloveyou123456", "iloveyoubaby", "lovemeforever", "jesuschrist1", "jesuslovesme", "jesus is lord",
        "godisgood123", "praisethelord", "blessed12345", "christmas2024", "christmas2025", "halloween123", "chocolate123", "strawberry12", "watermelon123", "butterfly123",
        "sunflower123", "snowflake123", "rainbow12345", "unicorn12345", "mickeymouse1", "winniethepooh", "babygirl1234", "beautiful123", "sweetheart12", "princess12345",
        "homesweethome", "home sweet home", "livelaughlove", "live laugh love", "keepcalmandcarryon", "keep calm and carry on", "letmeinplease", "let me in please", "opensesame123",
    };

    /// <summary>Words people build passwords around, longest taken out first; what is left must be a text of its own.</summary>
    public static readonly string[] Words =
    [
        "administrator", "passphrase", "passwort", "password", "passwd", "motdepasse", "contrasena", "welcome", "willkommen", "bienvenue", "letmein", "changeme", "trustnoone",
        "iloveyou", "ichliebedich", "qwertyuiop", "qwertz", "qwerty", "azerty", "asdfgh", "zxcvbn", "qazwsx", "abcdef", "abc", "admin", "master", "monkey", "dragon", "shadow",
        "sunshine", "princess", "football", "baseball", "basketball", "superman", "batman", "michael", "jennifer", "jordan", "charlie", "ashley", "freedom", "whatever", "starwars",
        "computer", "internet", "secret", "login", "hello", "hallo", "summer", "winter", "spring", "autumn", "sommer", "studio", "makerstudio", "candle", "fragrance", "test", "guest",
        "user", "root", "love", "pass",
    ];
}
