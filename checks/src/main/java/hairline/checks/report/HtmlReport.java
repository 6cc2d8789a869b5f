package hairline.checks.report;

import hairline.checks.report.BriefPage.Fact;
import hairline.checks.report.BriefPage.Facts;
import hairline.checks.report.BriefPage.Figure;
import hairline.checks.report.BriefPage.Found;
import hairline.checks.report.BriefPage.Items;
import hairline.checks.report.BriefPage.Part;
import hairline.checks.report.BriefPage.Section;
import hairline.checks.report.BriefPage.Table;
import hairline.checks.report.BriefPage.Ticks;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;

/**
 * The briefs of a run as one page of HTML. It holds all that it shows, asks the network for
 * nothing, runs no script, and is readable in light and dark, on paper, by keyboard and by screen
 * reader.
 */
public final class HtmlReport implements ReportWriter {
  /** Names for the colours of the drawings, so that a dark page can give them others. */
  private static final Map<String, String> COLOURS =
      Map.ofEntries(
          Map.entry("#1c2430", "var(--ink)"),
          Map.entry("#56616f", "var(--quiet)"),
          Map.entry("stroke:#fff", "stroke:var(--paper)"),
          Map.entry("#d9dee4", "var(--grid)"),
          Map.entry("#dfe4ea", "var(--fill)"),
          Map.entry("#8a94a1", "var(--step)"),
          Map.entry("#b3261e", "var(--mark)"),
          Map.entry("#8a1c16", "var(--mark)"),
          Map.entry("#bcd3e8", "var(--band)"),
          Map.entry("#1f5f8b", "var(--blue)"));

  private static final String LOOK =
      """
      :root{color-scheme:light dark;--paper:#fff;--ink:#1c2430;--quiet:#56616f;--grid:#d9dee4;\
      --fill:#dfe4ea;--step:#8a94a1;--mark:#b3261e;--band:#bcd3e8;--blue:#1f5f8b;--line:#c5ccd4;\
      --head:#eef1f4;--error:#b3261e;--warning:#0b5d85;--note:#56616f}
      @media(prefers-color-scheme:dark){:root{--paper:#14181d;--ink:#e6ebf0;--quiet:#a9b5c2;\
      --grid:#323a44;--fill:#3a4450;--step:#7f8b98;--mark:#ff9a8d;--band:#2c4a63;--blue:#7fc1f0;\
      --line:#3b444f;--head:#1f252c;--error:#ff9a8d;--warning:#7fc1f0;--note:#a9b5c2}}
      @media print{:root{--paper:#fff;--ink:#000;--quiet:#444;--grid:#d9dee4;--fill:#dfe4ea;\
      --step:#8a94a1;--mark:#b3261e;--band:#bcd3e8;--blue:#1f5f8b;--line:#aaa;--head:#eef1f4;\
      --error:#b3261e;--warning:#0b5d85;--note:#444;color-scheme:light}}
      *{box-sizing:border-box}
      body{margin:0;background:var(--paper);color:var(--ink);\
      font:15px/1.45 "DejaVu Sans",Verdana,sans-serif}
      main{max-width:72rem;margin:0 auto;padding:1.2rem 1.4rem 3rem}
      h1{font-size:1.45rem;margin:.2rem 0 .6rem;overflow-wrap:anywhere}
      h2{font-size:1.05rem;margin:1.5rem 0 .4rem;padding-bottom:.15rem;\
      border-bottom:2px solid var(--line)}
      article+article{margin-top:3rem;border-top:4px double var(--line)}
      dl{display:grid;grid-template-columns:max-content 1fr;gap:.1rem .9rem;margin:.3rem 0}
      dt{color:var(--quiet)}dd{margin:0;overflow-wrap:anywhere}
      .wide{overflow-x:auto;margin:.4rem 0 .8rem}
      table{border-collapse:collapse;font-size:.86rem;min-width:60%}
      caption{text-align:left;color:var(--quiet);padding:.1rem 0 .25rem}
      th,td{text-align:left;vertical-align:top;padding:.18rem .55rem;\
      border:1px solid var(--line);font-variant-numeric:tabular-nums}
      thead th{background:var(--head);font-weight:bold}
      ul{margin:.3rem 0;padding-left:1.2rem}
      ul.ticks{list-style:none;padding:0;columns:2 24rem;column-gap:2rem}
      ul.ticks li{break-inside:avoid;display:flex;gap:.5rem;padding:.12rem 0}
      ul.ticks input{flex:none;width:1.05rem;height:1.05rem;margin:.15rem 0 0}
      .found{margin:.5rem 0;padding:.35rem .7rem;border-left:5px solid var(--note)}
      .found.error{border-color:var(--error)}.found.warning{border-color:var(--warning)}
      .found p{margin:0;font-weight:bold}
      .found .level{text-transform:uppercase;font-size:.78rem;letter-spacing:.04em;\
      margin-right:.5rem}
      .error .level{color:var(--error)}.warning .level{color:var(--warning)}
      figure{margin:.8rem 0;break-inside:avoid}
      figcaption{color:var(--quiet);font-size:.86rem;margin-bottom:.2rem}
      figure svg{width:100%;height:auto;display:block}
      .cautions{border:2px solid var(--ink);padding:.4rem .9rem;margin-top:1.4rem;\
      break-inside:avoid}
      .cautions p{margin:.2rem 0}
      :focus-visible{outline:3px solid var(--blue);outline-offset:2px}
      @page{margin:10mm}
      @media print{
      body{font:7pt/1.16 Arial,"Liberation Sans","DejaVu Sans Condensed",sans-serif}
      main{max-width:none;padding:0}
      article{display:grid;grid-template-columns:1fr 1fr;column-gap:5mm}
      h1,.full,article>div{grid-column:1/-1}section{min-width:0}
      h1{font-size:11pt;margin:0 0 .5mm}h2{font-size:8.4pt;margin:1.1mm 0 .4mm;padding:0;\
      border-width:1px;break-after:avoid}
      table{font-size:7pt;width:calc(100% - 1px)}th,td{padding:.1mm .8mm}caption{padding:0}
      .wide{overflow:visible;margin:.3mm 0 .7mm}figcaption,caption{font-size:7pt}
      dl{grid-template-columns:max-content 1fr}
      dl{margin:0;gap:0 2.5mm}ul{margin:.3mm 0}ul.ticks{columns:3;column-gap:4mm}
      ul.ticks li{padding:0;gap:1.2mm}
      ul.ticks input{width:2.5mm;height:2.5mm;margin:.2mm 0 0}
      .full>dl{columns:2;column-gap:5mm;display:block}.full>dl>dt{float:left;margin-right:2mm}
      .found{margin:.5mm 0;padding:0 0 0 1.5mm;border-left-width:3px;break-inside:avoid}
      .found .level{font-size:7pt;margin-right:1mm}
      figure{margin:.5mm 0}figcaption{margin:0}
      .full:has(>.found){columns:2;column-gap:5mm}
      .full:has(>.found) h2{column-span:all}td:nth-child(-n+4){white-space:nowrap}
      td:last-child{white-space:normal}
      .cautions{padding:.4mm 2mm;margin-top:1mm;border-width:1px;columns:2;column-gap:5mm}
      .cautions p{margin:0;break-inside:avoid}
      article+article{break-before:page;border:0;margin:0}
      }
      """;

  private final Writer out;
  private final ReportOptions options;
  private int ids;

  /** Writes UTF-8. */
  public HtmlReport(OutputStream out, ReportOptions options) {
    this.out = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
    this.options = options;
  }

  @Override
  public void begin() throws IOException {
    begin("Setter's brief");
  }

  /** Begins a page of this title. */
  void begin(String title) throws IOException {
    String drawings = SvgReport.STYLE;
    for (Map.Entry<String, String> colour : COLOURS.entrySet()) {
      drawings = drawings.replace(colour.getKey(), colour.getValue());
    }
    out.write(
        new HtmlText()
            .raw("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
            .raw("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; ")
            .raw("style-src 'unsafe-inline'; img-src data:\">\n")
            .raw("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
            .raw("<meta name=\"generator\" content=\"hairline ")
            .text(options.version())
            .raw("\">\n<title>")
            .text(title)
            .raw("</title>\n<style>\n")
            .raw(LOOK)
            .raw(drawings)
            .raw(".parta{fill:var(--blue)}.partb{fill:var(--step)}\n</style>\n</head>\n<body>\n")
            .raw("<main>\n")
            .toString());
  }

  @Override
  public void program(CheckedProgram program) throws IOException {
    HtmlText html = new HtmlText();
    html.raw("<article>\n").element("h1", "Setter's brief: " + program.name());
    if (program.trouble().isPresent()) {
      found(
          html,
          new Found(
              "error",
              "not checked: " + program.trouble().get().sentence(),
              List.of(new Fact("cure", program.trouble().get().cure()))));
    } else if (program.brief().isEmpty()) {
      html.element("p", "This program was not watched for a brief.");
    } else {
      sections(html, BriefBuilder.of(program, options).sections());
    }
    html.raw("</article>\n");
    out.write(html.toString());
  }

  /** One article of sections. */
  void article(String heading, List<Section> sections) throws IOException {
    HtmlText html = new HtmlText();
    html.raw("<article>\n").element("h1", heading);
    sections(html, sections);
    out.write(html.raw("</article>\n").toString());
  }

  private void sections(HtmlText html, List<Section> sections) {
    for (Section section : sections) {
      String id = "s" + ++ids;
      html.raw(section.wide() ? "<section class=\"full\"" : "<section");
      html.raw(" aria-labelledby=\"").raw(id).raw("\">\n");
      html.element("h2 id=\"" + id + "\"", section.heading());
      for (Part part : section.parts()) {
        part(html, part);
      }
      html.raw("</section>\n");
    }
  }

  private void part(HtmlText html, Part part) {
    if (part instanceof Facts facts) {
      facts(html, facts.facts());
    } else if (part instanceof Items items) {
      html.raw("<ul>\n");
      items.items().forEach(item -> html.element("li", item));
      html.raw("</ul>\n");
    } else if (part instanceof Ticks ticks) {
      html.raw("<ul class=\"ticks\">\n");
      for (String item : ticks.items()) {
        String id = "t" + ++ids;
        html.raw("<li><input type=\"checkbox\" id=\"").raw(id).raw("\"><label for=\"").raw(id);
        html.raw("\">").text(item).raw("</label></li>\n");
      }
      html.raw("</ul>\n");
    } else if (part instanceof Found found) {
      found(html, found);
    } else if (part instanceof Table table) {
      table(html, table);
    } else if (part instanceof Figure figure) {
      html.raw("<figure>\n");
      html.element("figcaption", figure.caption());
      html.raw("<svg role=\"img\" aria-label=\"").text(figure.caption()).raw("\"");
      html.raw(figure.svg().substring("<svg".length())).raw("</figure>\n");
    }
  }

  private static void facts(HtmlText html, List<Fact> facts) {
    html.raw("<dl>\n");
    for (Fact fact : facts) {
      html.element("dt", fact.label()).element("dd", fact.text());
    }
    html.raw("</dl>\n");
  }

  private static void found(HtmlText html, Found found) {
    html.raw("<div class=\"found ").raw(found.level()).raw("\">\n<p><span class=\"level\">");
    html.raw(found.level()).raw("</span> ").text(found.message()).raw("</p>\n");
    facts(html, found.facts());
    html.raw("</div>\n");
  }

  private void table(HtmlText html, Table table) {
    String id = "c" + ++ids;
    html.raw("<div class=\"wide\" tabindex=\"0\" role=\"region\" aria-labelledby=\"").raw(id);
    html.raw("\">\n<table>\n").element("caption id=\"" + id + "\"", table.caption());
    html.raw("<thead>\n<tr>\n");
    table.head().forEach(cell -> html.element("th scope=\"col\"", cell));
    html.raw("</tr>\n</thead>\n<tbody>\n");
    for (List<String> row : table.rows()) {
      html.raw("<tr>\n");
      for (int k = 0; k < row.size(); k++) {
        html.element(k == 0 ? "th scope=\"row\"" : "td", row.get(k));
      }
      html.raw("</tr>\n");
    }
    html.raw("</tbody>\n</table>\n</div>\n");
  }

  @Override
  public void end(Verdict verdict) throws IOException {
    end(Words.found(verdict) + " in " + Words.count(verdict.programs(), "program") + ".");
  }

  /** Ends the page with a sentence and the cautions. */
  void end(String sentence) throws IOException {
    HtmlText html = new HtmlText();
    html.raw("<section class=\"cautions\" aria-label=\"Cautions\">\n");
    html.element("p", sentence);
    for (String caution : Words.CAUTIONS) {
      html.element("p", caution);
    }
    html.raw("</section>\n</main>\n</body>\n</html>\n");
    out.write(html.toString());
    out.flush();
  }
}
