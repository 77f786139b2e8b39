// Where in a message a code stands, in each language that the engines read.

const lines = (code, change) => code.split('\n').map(change).join('\n');
const oneLine = code => code.replace(/\n/g, ' ');
const quoted = code => lines(code, line => `> ${line}`);
const broken = (code, width) => code.replace(new RegExp(`[^\\n]{${width}}(?=[^\\n])`, 'g'), '$&\n');
const escaped = text => text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;');
const withBreaks = text => escaped(text).replace(/\n/g, '<br>\n');

// What people do to any text, whatever the language.
const plain = {
    'bare': code => code,
    'one line': oneLine,
    'in a sentence': code => `Look at this ${code} nice, no?`,
    'behind a colon': code => `Kelp for the jetty: ${oneLine(code)}. Use it as you like!`,
    'in brackets': code => `(${code})`,
    'in quotes': code => `"${code}"`,
    'indented': code => lines(code, line => `    ${line}`),
    'empty lines': code => lines(code, line => `${line}\n`),
    'broken at 20': code => broken(code, 20),
    'quote': code => quoted(code),
    'reply in reply': code => `> keeper wrote:\n${lines(code, line => `> > ${line}`)}\n>\n> thanks\n\nyou are welcome`,
    'numbered': code => lines(code, (line, i) => `${i + 1}. ${line}`),
    'bullets': code => lines(code, line => `- ${line}`),
    'stamps': code => lines(code, (line, i) => `[12:${10 + i % 50}] keeper: ${line}`),
};

const markdown = {
    ...plain,
    'bold': code => `**${code}**`,
    'italic': code => `_${code}_`,
    'struck': code => `~~${code}~~`,
    'heading': code => `# ${oneLine(code)}`,
    'list': code => `- kelp\n- ${code.replace(/\n/g, '\n  ')}\n- rope`,
    'code': code => `\`\`\`\n${code}\n\`\`\``,
    'code in line': code => `see \`${oneLine(code)}\` there`,
    'spoiler': code => `||${code}||`,
    'table': code => `| texture | code |\n| --- | --- |\n| kelp | ${oneLine(code)} |`,
    'list in quote': code => `> - ${code.replace(/\n/g, '\n>   ')}`,
};

const bbcode = {
    ...plain,
    'bold': code => `[b]${code}[/b]`,
    'italic': code => `[i]${code}[/i]`,
    'struck': code => `[s]${code}[/s]`,
    'list': code => `[list]\n[*]kelp\n[*]${code}\n[*]rope\n[/list]`,
    'code': code => `[code]${code}[/code]`,
    'quote': code => `[quote]${code}[/quote]`,
    'reply in reply': code => `[quote]thanks\n[quote]${code}[/quote]\n[/quote]\nyou are welcome`,
    'spoiler': code => `[spoiler]${code}[/spoiler]`,
    'table': code => `[table][tr][td]kelp[/td][td]${code}[/td][/tr][/table]`,
};

const textile = {
    ...plain,
    // Textile's own: textile-js takes time without end for many lines that begin with '- '.
    'bullets': code => lines(code, line => `* ${line}`),
    'bold': code => `*${code}*`,
    'italic': code => `_${code}_`,
    'struck': code => `-${code}-`,
    'heading': code => `h2. ${oneLine(code)}`,
    'list': code => `* kelp\n* ${code}\n* rope`,
    'code': code => `bc. ${code}`,
    'code in line': code => `see @${oneLine(code)}@ there`,
    'quote': code => `bq. ${code}`,
    'table': code => `|kelp|${oneLine(code)}|`,
};

const html = {
    ...Object.fromEntries(Object.entries(plain).map(([name, place]) => [name, code => `<p>${withBreaks(place(code))}</p>`])),
    'bold': code => `<p><b>${withBreaks(code)}</b></p>`,
    'italic': code => `<p><i>${withBreaks(code)}</i></p>`,
    'struck': code => `<p><s>${withBreaks(code)}</s></p>`,
    'heading': code => `<h2>${withBreaks(code)}</h2>`,
    'list': code => `<ul><li>kelp</li><li>${withBreaks(code)}</li></ul>`,
    'code': code => `<pre><code>${escaped(code)}</code></pre>`,
    'code in line': code => `<p>see <code>${escaped(oneLine(code))}</code> there</p>`,
    'quote': code => `<blockquote><p>${withBreaks(code)}</p></blockquote>`,
    'reply in reply': code => `<blockquote>thanks<blockquote>${withBreaks(code)}</blockquote></blockquote><p>welcome</p>`,
    'spoiler': code => `<details><summary>kelp</summary>${withBreaks(code)}</details>`,
    'table': code => `<table><tr><td>kelp</td><td>${withBreaks(code)}</td></tr></table>`,
};

export const placements = {plain, markdown, bbcode, textile, html};
export const placementNames = [...new Set(Object.values(placements).flatMap(family => Object.keys(family)))];
