// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/stamp.h"

#include "model/store/hash.h"
#include "reports/compose/integrity.h"

namespace sumpbook::compose {
namespace {

std::string_view slug(StampAnswer answer) {
    switch (answer) {
    case StampAnswer::fits:
        return "fits";
    case StampAnswer::another_key:
        return "another-key";
    case StampAnswer::changed:
        break;
    }
    return "changed";
}

document::Value or_null(const std::string& text) {
    return text.empty() ? document::Value() : document::Value(text);
}

void add_fields(document::Object& json, const store::Stamp& stamp) {
    json.add("fingerprint", stamp.fingerprint.text()).add("signed_on", stamp.date);
    json.add("name", or_null(stamp.name)).add("note", or_null(stamp.note));
    json.add("key", store::hex_text(stamp.key)).add("signature", store::hex_text(stamp.signature));
}

document::Facts stamp_facts(const store::Stamp& stamp) {
    document::Facts facts{{{"Fingerprint", stamp.fingerprint.text()}, {"Signed on", iso_text(stamp.date)}}};
    if (!stamp.name.empty()) facts.lines.emplace_back("Signed by", stamp.name);
    if (!stamp.note.empty()) facts.lines.emplace_back("Note", stamp.note);
    facts.lines.emplace_back("Key", store::hex_text(stamp.key));
    return facts;
}

} // namespace

CheckedStamp checked_stamp(store::Stamp stamp, const store::PublicKey& key) {
    auto answer = StampAnswer::fits;
    if (stamp.key != key) {
        answer = StampAnswer::another_key;
    } else if (!store::is_signed(stamp)) {
        answer = StampAnswer::changed;
    }
    return {.stamp = std::move(stamp), .answer = answer, .garage = {}, .names = {}};
}

document::Value stamp_json(const store::Stamp& stamp) {
    document::Object json = document::result();
    add_fields(json, stamp);
    return json;
}

document::Value checked_stamp_json(const CheckedStamp& checked) {
    document::Object json = document::result();
    json.add("answer", slug(checked.answer));
    add_fields(json, checked.stamp);
    json.add("garage", checked.garage ? verify_json(*checked.garage, checked.names) : document::Value());
    return json;
}

document::Document checked_stamp_text(const CheckedStamp& checked) {
    document::Document words;
    switch (checked.answer) {
    case StampAnswer::fits:
        words.sentence("The signature fits: whoever holds this key signed what the stamp says.",
                       document::Severity::good);
        break;
    case StampAnswer::another_key:
        words.sentence("The stamp was signed with another key than the one given, so it says nothing about "
                       "whoever gave you that key.",
                       document::Severity::danger);
        break;
    case StampAnswer::changed:
        words.sentence(
            "The signature does not fit: something on the stamp was changed since it was signed, or "
            "mistyped. It proves nothing.",
            document::Severity::danger);
        break;
    }
    words.facts(stamp_facts(checked.stamp));
    if (checked.answer != StampAnswer::fits) return words;
    if (checked.garage) {
        words.append(verify_text(*checked.garage, checked.names));
    } else {
        words.sentence(
            "No garage file was named, so none was tested against the stamp. Name it with -g FILE.");
    }
    words.sentence(
        "A stamp shows that the holder of the key had this fingerprint in front of them. The day is "
        "by their clock. It does not show that the entries are true, nor whose key it is: take the "
        "public key from the signer, never from whoever hands you the file.");
    return words;
}

document::Value new_key_json(const NewKey& key) {
    document::Object json = document::result();
    json.add("private_key_file", key.private_file).add("public_key_file", key.public_file);
    json.add("name", or_null(key.name)).add("key", store::hex_text(key.key));
    return json;
}

document::Document new_key_text(const NewKey& key) {
    document::Document words;
    words.facts({{{"Private key", key.private_file},
                  {"Public key", key.public_file},
                  {"Key", store::hex_text(key.key)}}});
    words.sentence(
        "Keep the private key to yourself, with a copy in a safe place: whoever has it can sign in "
        "your name, and a lost one cannot be made again. Give the public key to everybody who is to "
        "test your stamps.");
    return words;
}

} // namespace sumpbook::compose
