// The engines: `reads` names the language of the message (see placements.mjs), `render` makes of it
// what arrives, as HTML unless `asText`.

import {createRequire} from 'node:module';
import bbobHtml from '@bbob/html';
import bbobPreset from '@bbob/preset-html5';
import * as commonmark from 'commonmark';
import libqp from 'libqp';
import linkifyHtml from 'linkify-html';
import MarkdownIt from 'markdown-it';
import {full as emoji} from 'markdown-it-emoji';
import {marked} from 'marked';
import {micromark} from 'micromark';
import {gfm, gfmHtml} from 'micromark-extension-gfm';
import {Remarkable} from 'remarkable';
import sanitizeHtml from 'sanitize-html';
import showdown from 'showdown';
import {smartypants} from 'smartypants';
import textile from 'textile-js';
import TurndownService from 'turndown';
import YaBbcode from 'ya-bbcode';

const require = createRequire(import.meta.url);
const snarkdown = require('snarkdown');
const simpleMarkdown = require('simple-markdown');

const parser = new commonmark.Parser();
const smartParser = new commonmark.Parser({smart: true});
const commonHtml = new commonmark.HtmlRenderer();
const strict = new MarkdownIt('commonmark');
const lively = new MarkdownIt({linkify: true, typographer: true, breaks: true}).use(emoji);
const typographic = new Remarkable({typographer: true, breaks: true});
const everyday = new showdown.Converter();
const generous = new showdown.Converter({
    simpleLineBreaks: true, strikethrough: true, tables: true, tasklists: true, emoji: true, underline: true,
    simplifiedAutoLink: true, literalMidWordUnderscores: true});
const turndown = new TurndownService();
const yaBbcode = new YaBbcode();
const simpleParse = simpleMarkdown.defaultBlockParse;
const simpleHtml = simpleMarkdown.defaultHtmlOutput;

/// Format=flowed with a narrow window (RFC 3676): a blank before each soft break, words never cut.
const flowed = text => text.split('\n').flatMap(line => line.match(/.{1,40}(?:\s|$)|\S+/g) ?? ['']).join('\r\n');

/// Breaks inside words, as a terminal of so many columns does.
const cutAt = (text, columns) => text.replace(new RegExp(`[^\\n]{${columns}}`, 'g'), '$&\n');

const plainToHtml = text => text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/\n/g, '<br>');

export const engines = [
    {name: 'markdown-it, commonmark', reads: 'markdown', render: text => strict.render(text)},
    {name: 'markdown-it, links, typographer, emoji', reads: 'markdown', render: text => lively.render(text)},
    {name: 'marked, breaks', reads: 'markdown', render: text => marked.parse(text, {gfm: true, breaks: true})},
    {name: 'marked, pedantic', reads: 'markdown', render: text => marked.parse(text, {pedantic: true, gfm: false})},
    {name: 'commonmark', reads: 'markdown', render: text => commonHtml.render(parser.parse(text))},
    {name: 'commonmark, smart', reads: 'markdown', render: text => commonHtml.render(smartParser.parse(text))},
    {name: 'micromark', reads: 'markdown', render: text => micromark(text)},
    {name: 'micromark, gfm', reads: 'markdown',
        render: text => micromark(text, {extensions: [gfm()], htmlExtensions: [gfmHtml()]})},
    {name: 'remarkable, typographer', reads: 'markdown', render: text => typographic.render(text)},
    {name: 'showdown', reads: 'markdown', render: text => everyday.makeHtml(text)},
    {name: 'showdown, all on', reads: 'markdown', render: text => generous.makeHtml(text)},
    {name: 'snarkdown', reads: 'markdown', render: text => snarkdown(text)},
    {name: 'simple-markdown', reads: 'markdown', render: text => simpleHtml(simpleParse(`${text}\n\n`))},
    {name: 'markdown-it, then linkify-html', reads: 'markdown', render: text => linkifyHtml(strict.render(text))},
    {name: 'marked, then smartypants', reads: 'markdown', render: text => smartypants(marked.parse(text), '3')},
    {name: 'marked, then sanitize-html', reads: 'markdown', render: text => sanitizeHtml(marked.parse(text))},
    {name: 'bbob', reads: 'bbcode', render: text => bbobHtml(text, bbobPreset())},
    {name: 'ya-bbcode', reads: 'bbcode', render: text => yaBbcode.parse(text)},
    {name: 'ya-bbcode, then smartypants', reads: 'bbcode', render: text => smartypants(yaBbcode.parse(text), '3')},
    {name: 'textile-js', reads: 'textile', render: text => textile(text)},
    {name: 'sanitize-html', reads: 'html', render: text => sanitizeHtml(text)},
    {name: 'turndown', reads: 'html', asText: true, render: text => turndown.turndown(text)},
    {name: 'turndown, then markdown-it', reads: 'html', render: text => strict.render(turndown.turndown(text))},
    {name: 'linkify-html', reads: 'html', render: text => linkifyHtml(text)},
    {name: 'smartypants', reads: 'plain', render: text => smartypants(plainToHtml(text), '3')},
    {name: 'quoted-printable, raw', reads: 'plain', asText: true, render: text => libqp.wrap(libqp.encode(text), 76)},
    {name: 'flowed mail', reads: 'plain', asText: true, render: flowed},
    {name: 'cut at 27 columns', reads: 'plain', asText: true, render: text => cutAt(text, 27)},
    {name: 'JSON string', reads: 'plain', asText: true, render: text => JSON.stringify({message: text})},
    {name: 'URL encoding', reads: 'plain', asText: true, render: text => encodeURIComponent(text)},
    {name: 'escaped twice', reads: 'plain', render: text => plainToHtml(plainToHtml(text))},
];
