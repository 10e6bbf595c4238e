type Props = { readonly name: string; readonly value: string; readonly ticked: boolean; readonly text: string };

export function Tick({ name, value, ticked, text }: Props) {
  return (
    <label className="tick">
      <input type="checkbox" name={name} value={value} defaultChecked={ticked} autoComplete="off" /> {text}
    </label>
  );
}
