"""What RFC 4287 (The Atom Syndication Format) asks of a feed: a schema of our own, and the rules no schema can say.

The schema was written from the RFC's sections, whose numbers stand beside each pattern. Elements of other
vocabularies may stand in a feed, an entry or a person (section 6.4); attributes that Atom does not have may not.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from functools import cache
from urllib.parse import urlsplit

from lxml import etree

ATOM = "http://www.w3.org/2005/Atom"
A = f"{{{ATOM}}}"

# Each construct and element once; `feed` and `entry` say how often.
SCHEMA = """<grammar xmlns="http://relaxng.org/ns/structure/1.0" ns="http://www.w3.org/2005/Atom"
  xmlns:h="http://www.w3.org/1999/xhtml" datatypeLibrary="http://www.w3.org/2001/XMLSchema-datatypes">
<start><ref name="feed"/></start>

<define name="common"> <!-- 2: any element may say its base and its language -->
  <optional><attribute name="xml:base"/></optional>
  <optional><attribute name="xml:lang"><ref name="language"/></attribute></optional>
</define>
<define name="language"><data type="string">
  <param name="pattern">([A-Za-z]{1,8}(-[A-Za-z0-9]{1,8})*)?</param></data></define>
<define name="media"><data type="string"><param name="pattern">.+/.+</param></data></define>
<define name="some"><data type="string"><param name="minLength">1</param></data></define>

<define name="text"> <!-- 3.1: a text construct -->
  <ref name="common"/>
  <choice>
    <group><optional><attribute name="type"><choice><value>text</value><value>html</value></choice></attribute>
      </optional><text/></group>
    <group><attribute name="type"><value>xhtml</value></attribute><element name="h:div"><ref name="any"/></element>
      </group>
  </choice>
</define>
<define name="person"> <!-- 3.2: a name, once; an address of either kind, at most once -->
  <ref name="common"/>
  <interleave>
    <element name="name"><ref name="some"/></element>
    <optional><element name="uri"><ref name="some"/></element></optional>
    <optional><element name="email"><data type="string"><param name="pattern">.+@.+</param></data></element></optional>
    <ref name="foreign"/>
  </interleave>
</define>
<define name="date"> <!-- 3.3: RFC 3339, with a capital T, and a capital Z or an offset -->
  <ref name="common"/>
  <data type="dateTime"><param name="pattern">[0-9-]{10}T[0-9:.]{8,}(Z|[+\\-][0-9]{2}:[0-9]{2})</param></data>
</define>
<define name="uri"><ref name="common"/><ref name="some"/></define>

<define name="feed"><element name="feed"> <!-- 4.1.1 -->
  <ref name="common"/>
  <interleave>
    <ref name="about"/>
    <optional><element name="generator"><ref name="common"/><optional><attribute name="uri"/></optional>
      <optional><attribute name="version"/></optional><ref name="some"/></element></optional>
    <optional><element name="icon"><ref name="uri"/></element></optional>
    <optional><element name="logo"><ref name="uri"/></element></optional>
    <optional><element name="subtitle"><ref name="text"/></element></optional>
    <zeroOrMore><ref name="entry"/></zeroOrMore>
  </interleave>
</element></define>
<define name="entry"><element name="entry"> <!-- 4.1.2 -->
  <ref name="common"/>
  <interleave>
    <ref name="about"/>
    <optional><ref name="content"/></optional>
    <optional><element name="published"><ref name="date"/></element></optional>
    <optional><element name="summary"><ref name="text"/></element></optional>
  </interleave>
</element></define>
<define name="about"><interleave> <!-- what a feed and an entry both have -->
  <element name="id"><ref name="uri"/></element>
  <element name="title"><ref name="text"/></element>
  <element name="updated"><ref name="date"/></element>
  <zeroOrMore><element name="author"><ref name="person"/></element></zeroOrMore>
  <zeroOrMore><element name="contributor"><ref name="person"/></element></zeroOrMore>
  <zeroOrMore><ref name="category"/></zeroOrMore>
  <zeroOrMore><ref name="link"/></zeroOrMore>
  <optional><element name="rights"><ref name="text"/></element></optional>
  <ref name="foreign"/>
</interleave></define>
<define name="content"><element name="content"><choice> <!-- 4.1.3 -->
  <ref name="text"/>
  <group><ref name="common"/><optional><attribute name="type"><ref name="media"/></attribute></optional>
    <attribute name="src"><ref name="some"/></attribute><empty/></group>
</choice></element></define>
<define name="category"><element name="category"> <!-- 4.2.2 -->
  <ref name="common"/><attribute name="term"/><optional><attribute name="scheme"/></optional>
  <optional><attribute name="label"/></optional><empty/>
</element></define>
<define name="link"><element name="link"> <!-- 4.2.7 -->
  <ref name="common"/>
  <attribute name="href"><ref name="some"/></attribute>
  <optional><attribute name="rel"><ref name="some"/></attribute></optional>
  <optional><attribute name="type"><ref name="media"/></attribute></optional>
  <optional><attribute name="hreflang"><ref name="language"/></attribute></optional>
  <optional><attribute name="title"/></optional>
  <optional><attribute name="length"/></optional>
  <empty/>
</element></define>

<define name="foreign"><zeroOrMore><element><anyName><except><nsName/></except></anyName><ref name="any"/></element>
  </zeroOrMore></define>
<define name="any"><zeroOrMore><choice><text/><attribute><anyName/></attribute>
  <element><anyName/><ref name="any"/></element></choice></zeroOrMore></define>
</grammar>"""


@cache
def schema() -> etree.RelaxNG:
    """The schema, read once."""
    return etree.RelaxNG(etree.fromstring(SCHEMA))


def wrong_with(feed: bytes) -> list[str]:
    """What RFC 4287 has against a feed; nothing if it is valid."""
    try:
        root = etree.fromstring(feed)
    except etree.XMLSyntaxError as error:
        return [f"not XML: {error}"]
    if not schema().validate(root):
        return [f"line {error.line}: {error.message}" for error in schema().error_log]
    return [*_no_author(root), *_ids(root), *_links(root)]


def _no_author(root: etree._Element) -> Iterator[str]:
    """4.1.1: a feed has an author unless every entry has one."""
    if root.find(f"{A}author") is None:
        entries = root.findall(f"{A}entry")
        without = [entry for entry in entries if entry.find(f"{A}author") is None]
        if without or not entries:
            yield f"no author for the feed, and none for {len(without)} of {len(entries)} entries"


def _ids(root: etree._Element) -> Iterator[str]:
    """4.2.6: an id is an absolute IRI, and belongs to one thing."""
    ids = [str(one.text).strip() for one in root.iter(f"{A}id")]
    yield from (f"two things have the id {one}" for one, times in Counter(ids).items() if times > 1)
    yield from (f"the id {one} is no IRI" for one in ids if not urlsplit(one).scheme)


def _links(root: etree._Element) -> Iterator[str]:
    """4.1.1 and 4.1.2: one alternate link of a type and language; an entry without content has one."""
    for holder in (root, *root.findall(f"{A}entry")):
        links = [link for link in holder.findall(f"{A}link") if link.get("rel", "alternate") == "alternate"]
        same = Counter((link.get("type"), link.get("hreflang")) for link in links)
        yield from (f"{times} alternate links of one kind" for times in same.values() if times > 1)
        if holder is not root and not links and holder.find(f"{A}content") is None:
            yield "an entry with neither content nor an alternate link"
