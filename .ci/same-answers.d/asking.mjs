// Asks one that runs what stands in a list, and keeps each answer in a file of its own:
//   node asking.mjs LIST FOLDER PORT BROKER_PORT [KEY]
import {execFileSync} from 'node:child_process';
import {mkdirSync, readFileSync, writeFileSync} from 'node:fs';
import {request} from 'node:http';
import {basename} from 'node:path';

const [list, folder, port, brokerPort, key = ''] = process.argv.slice(2);
const name = basename(list, '.txt');
const PATIENCE_MS = 60_000;
const kept = new Map([['KEY', key]]);
let headers = {};
let body = '';
let count = 0;

const pause = ms => new Promise(done => setTimeout(done, ms));

function ask(method, path, more = {}, sent = '') {
  return new Promise((done, failed) => {
    const asked = request({port, host: '127.0.0.1', method, path, headers: more}, answer => {
      const parts = [];
      answer.on('data', part => parts.push(part));
      answer.on('end', () => done({answer, text: Buffer.concat(parts).toString('utf8')}));
    });
    asked.on('error', failed);
    asked.end(sent);
  });
}

const byKey = key ? {Authorization: `Bearer ${key}`} : {};

async function until(what, holds) {
  for (const began = Date.now(); !(await holds()); await pause(20)) {
    if (Date.now() - began > PATIENCE_MS) throw new Error(`In vain: ${what}`);
  }
}

const answers = (path, text) => async () => (await ask('GET', path, byKey)).text.includes(text);
/** To the broker, and by the live feed. */
async function allIsTold() {
  const {event} = JSON.parse((await ask('GET', '/api/range', byKey)).text);
  const waits = /"waiting":[1-9]/.test((await ask('GET', '/api/broker', byKey)).text);
  return !waits && asItCame.last() === `id: ${event}`;
}

async function overHttp(said, line) {
  const [, method, path, sent = ''] = /^(\S+) (\S+) ?(.*)$/.exec(said);
  const type = method === 'GET' || method === 'HEAD' ? {} : {'Content-Type': 'application/json'};
  const length = sent ? {'Content-Length': Buffer.byteLength(sent)} : {};
  const {answer, text} = await ask(method, path, {...type, ...length, ...headers}, sent);
  headers = {};
  body = text;
  const told = [];
  for (let i = 0; i < answer.rawHeaders.length; i += 2) {
    if (!/^(date|content-length)$/i.test(answer.rawHeaders[i])) told.push(`${answer.rawHeaders[i]}: ${answer.rawHeaders[i + 1]}`);
  }
  const file = `${String(++count).padStart(3, '0')} ${line.replaceAll(/[^A-Za-z0-9.=?&,-]+/g, ' ').slice(0, 70)}`;
  writeFileSync(`${folder}/${name}/${file}`, `${line}\n${answer.statusCode} ${answer.statusMessage}\n${told.join('\n')}\n\n${text}`);
  if (method !== 'GET') await until('what was changed is told', allIsTold);
}

const words = {
  header: rest => (headers[rest.split(': ')[0]] = rest.slice(rest.indexOf(': ') + 2)),
  keep: rest => kept.set(rest.split(' ')[0], new RegExp(`"${rest.split(' ')[1]}":"?([^",}]*)`).exec(body)[1]),
  until: rest => until(rest, answers(rest.split(' ')[0], rest.slice(rest.indexOf(' ') + 1))),
  publish: rest =>
    execFileSync('mosquitto_pub', ['-p', brokerPort, '-q', '1', '-t', `castwell/${rest.split(' ')[0]}`, '-s'], {
      input: rest.slice(rest.indexOf(' ') + 1).replaceAll('|', '\n'),
    }),
};

/** The live feed from its start on. */
function listen() {
  const heard = {text: ''};
  const asked = request({port, host: '127.0.0.1', path: '/api/live?after=0', headers: byKey}, answer => {
    answer.setEncoding('utf8').on('data', part => (heard.text += part)).on('error', () => {});
  });
  asked.on('error', () => {}).end();
  return {last: () => heard.text.match(/^id: \d+$/gm)?.at(-1), end: () => (asked.destroy(), heard.text)};
}

mkdirSync(`${folder}/${name}`);
const asItCame = listen();
for (const line of readFileSync(list, 'utf8').split('\n').filter(line => line && !line.startsWith('#'))) {
  const said = line.replaceAll(/@([A-Z]+)@/g, (all, word) => kept.get(word) ?? all);
  const [first] = said.split(' ', 1);
  await (words[first] ? words[first](said.slice(first.length + 1)) : overHttp(said, line));
}
const fromTheStart = listen();
await until(
  'both live feeds are at the same place',
  () => asItCame.last() && asItCame.last() === fromTheStart.last(),
).catch(late => {
  throw new Error(`${late.message}: ${asItCame.last()} as it came, ${fromTheStart.last()} from the start`);
});
writeFileSync(`${folder}/live/${name} as it came`, asItCame.end());
writeFileSync(`${folder}/live/${name} from the start`, fromTheStart.end());
